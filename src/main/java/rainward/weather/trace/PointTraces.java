package rainward.weather.trace;

import java.util.List;
import rainward.weather.marginal.RainMarginals;

/**
 * Traces of one point with what they were made from.
 *
 * @param traces hourly courses
 * @param marginals chance and amount that the traces keep
 * @param basis what they rest on
 */
public record PointTraces(Traces traces, RainMarginals marginals, TraceBasis basis) {

    /** What was made up or left out, in words for the user. */
    public List<String> warnings() {
        return basis.warnings();
    }
}
