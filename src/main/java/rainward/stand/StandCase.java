package rainward.stand;

import rainward.farm.Mix;
import rainward.farm.Require;
import rainward.soil.SoilRun;
import rainward.weather.trace.Traces;

/**
 * A question: what becomes of this mix in this ground under this weather?
 *
 * @param mix sown
 * @param conditions of seeding
 * @param soil on every trace, at the depth of {@link SeedPlacement#depthCm}
 * @param traces of the weather that the soil ran on
 * @param hours of seeding, inside the traces
 */
public record StandCase(
        Mix mix, SeedingConditions conditions, SoilRun soil, Traces traces, SeedingHours hours) {

    public StandCase {
        Require.that(
                soil.hours() == traces.hours() && soil.traces() == traces.count(),
                "soil and traces differ in hours or in number");
        Require.that(soil.start().equals(traces.start()), "soil and traces differ in start");
        int first = traces.hourOf(hours.start());
        Require.that(
                first >= 0 && first + hours.count() <= traces.hours(),
                "seeding hours lie outside the traces");
    }

    public int firstHour() {
        return traces.hourOf(hours.start());
    }
}
