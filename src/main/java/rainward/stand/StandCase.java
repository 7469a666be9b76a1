package rainward.stand;

import java.util.Optional;
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
 * @param later what soil and weather do after the traces; empty where nothing is supposed
 */
public record StandCase(
        Mix mix,
        SeedingConditions conditions,
        SoilRun soil,
        Traces traces,
        SeedingHours hours,
        Optional<Later> later) {

    /** A question that ends with its traces. */
    public StandCase(
            Mix mix,
            SeedingConditions conditions,
            SoilRun soil,
            Traces traces,
            SeedingHours hours) {
        this(mix, conditions, soil, traces, hours, Optional.empty());
    }

    public StandCase {
        Require.that(
                soil.hours() == traces.hours() && soil.traces() == traces.count(),
                "soil and traces differ in hours or in number");
        Require.that(soil.start().equals(traces.start()), "soil and traces differ in start");
        int first = traces.hourOf(hours.start());
        Require.that(
                first >= 0 && first + hours.count() <= traces.hours(),
                "seeding hours lie outside the traces");
        Require.that(
                later.isEmpty() || later.get().soil().start().equals(traces.timeOf(traces.hours())),
                "later soil does not start where the traces end");
    }

    /**
     * How it goes on after the traces, on a smaller number of courses.
     *
     * @param soil from the end of the traces on, at the same depth
     * @param traces the weather that it ran on
     * @param courseOf the course that each trace goes on with
     */
    public record Later(SoilRun soil, Traces traces, int[] courseOf) {

        public Later {
            Require.that(
                    soil.hours() == traces.hours() && soil.traces() == traces.count(),
                    "later soil and weather differ in hours or in number");
        }
    }

    /** Hours of the traces and of what comes after them. */
    public int allHours() {
        return traces.hours() + later.map(l -> l.traces().hours()).orElse(0);
    }

    public int firstHour() {
        return traces.hourOf(hours.start());
    }
}
