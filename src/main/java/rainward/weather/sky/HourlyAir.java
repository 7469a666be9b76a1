package rainward.weather.sky;

import java.time.Duration;
import java.time.Instant;
import rainward.farm.Require;

/**
 * Air, wind and sky by the hour, without gaps; entry {@code h} holds for {@code [start + h, start +
 * h + 1)}.
 *
 * @param start full hour, UTC
 * @param airTempC at screen height [C]
 * @param dewPointC at screen height [C]
 * @param windMps at 2 m [m/s]
 * @param skyCoverFraction 0 clear to 1 overcast
 */
public record HourlyAir(
        Instant start,
        double[] airTempC,
        double[] dewPointC,
        double[] windMps,
        double[] skyCoverFraction) {

    public HourlyAir {
        Require.that(
                start.getEpochSecond() % 3600 == 0 && start.getNano() == 0,
                "series starts at " + start + ", must be a full hour");
        each("airTempC", airTempC, airTempC.length, -60, 60);
        each("dewPointC", dewPointC, airTempC.length, -80, 40);
        each("windMps", windMps, airTempC.length, 0, 100);
        each("skyCoverFraction", skyCoverFraction, airTempC.length, 0, 1);
    }

    private static void each(String name, double[] values, int length, double low, double high) {
        Require.that(
                values.length == length,
                () -> name + " has " + values.length + " hours, not " + length);
        Require.eachInRange(name, values, low, high);
    }

    public int hours() {
        return airTempC.length;
    }

    /** First instant after the series. */
    public Instant end() {
        return start.plus(Duration.ofHours(hours()));
    }
}
