package rainward.weather.trace;

import java.util.List;
import rainward.weather.marginal.RainMarginals;

/**
 * Traces of one point with what they were made from.
 *
 * @param traces hourly courses
 * @param marginals chance and amount that the traces keep
 * @param warnings what was made up or left out, in words for the user
 */
public record PointTraces(Traces traces, RainMarginals marginals, List<String> warnings) {

    public PointTraces {
        warnings = List.copyOf(warnings);
    }
}
