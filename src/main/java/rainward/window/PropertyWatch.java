package rainward.window;

import java.util.List;
import rainward.farm.Field;
import rainward.farm.Mix;
import rainward.farm.Property;
import rainward.weather.trace.Traces;

/**
 * A property that is watched for rain.
 *
 * @param property name and place
 * @param traces weather there
 * @param pending fields whose seed is still to go in, each with the mix wanted first
 */
public record PropertyWatch(Property property, Traces traces, List<Pending> pending) {

    public PropertyWatch {
        pending = List.copyOf(pending);
    }

    /** A field and the mix that it waits for. */
    public record Pending(Field field, Mix mix) {}

    /** The least rain that is of use to any pending field [mm]. */
    double usefulMm() {
        return pending.stream()
                .mapToDouble(p -> UsefulRain.thresholdMm(p.field().ground().texture(), p.mix()))
                .min()
                .orElse(0);
    }
}
