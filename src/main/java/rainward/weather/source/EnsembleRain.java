package rainward.weather.source;

import java.time.Instant;
import java.util.List;
import rainward.farm.GeoPoint;
import rainward.farm.Require;
import rainward.weather.source.ForecastSeries.Stamp;

/**
 * Rain of the members of an ensemble, each a course that the weather may take.
 *
 * @param stamp whose, and how old
 * @param point where it holds
 * @param start of the first hour
 * @param rainMm by member and hour, all members equally long [mm]
 * @param warnings which members were left out, in words for the user
 */
public record EnsembleRain(
        Stamp stamp, GeoPoint point, Instant start, double[][] rainMm, List<String> warnings) {

    public EnsembleRain {
        warnings = List.copyOf(warnings);
        Require.that(rainMm.length >= 2, "an ensemble has at least two members");
        for (double[] member : rainMm) {
            Require.that(member.length == rainMm[0].length, "members differ in length");
            for (double mm : member) {
                Require.inRange("rainMm", mm, 0, 500);
            }
        }
    }

    public int members() {
        return rainMm.length;
    }

    public int hours() {
        return rainMm[0].length;
    }
}
