package rainward.weather;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import rainward.farm.GeoPoint;

/**
 * Forecast air drawn out to a horizon. Past the last forecast hour the last day of the forecast
 * lives on beside the month's usual course: {@code usual + (last day - usual) r^d}, d days after
 * it. Before the first hour the same hour of the first day stands in.
 */
final class HorizonAir {

    /**
     * Share of a day's departure from the usual that is left a day later, r: order of the lag-1
     * correlation of daily temperature in the eastern USA, from memory.
     */
    private static final double DAY_TO_DAY = 0.65;

    private static final int DAY = 24;

    private HorizonAir() {}

    /**
     * Air over a horizon.
     *
     * @param air to the end
     * @param warning what was made up, if anything
     */
    record Drawn(HourlyAir air, Optional<String> warning) {}

    static Drawn over(HourlyAir given, HourGrid grid, GeoPoint place, Climate climate) {
        int lead = (int) Duration.between(given.start(), grid.start()).toHours();
        HourlyAir usual = usual(grid, place, climate);
        int[] from = new int[grid.hours()];
        double[] weight = new double[grid.hours()];
        for (int h = 0; h < grid.hours(); h++) {
            from[h] = standIn(lead + h, given.hours());
            weight[h] = weight(lead + h, given.hours());
        }
        HourlyAir air = new HourlyAir(
                grid.start(),
                mix(given.airTempC(), usual.airTempC(), from, weight),
                mix(given.dewPointC(), usual.dewPointC(), from, weight),
                mix(given.windMps(), usual.windMps(), from, weight),
                mix(given.skyCoverFraction(), usual.skyCoverFraction(), from, weight));
        return new Drawn(air, warning(given, grid));
    }

    private static HourlyAir usual(HourGrid grid, GeoPoint place, Climate climate) {
        ZoneOffset zone = ZoneOffset.ofHours((int) Math.round(place.longitudeDeg() / 15));
        var site = new DayCourse.Site(place, climate);
        return new DayCourse(zone, site, PastAir::unknown).over(grid.start(), grid.hours());
    }

    private static int standIn(int hour, int hours) {
        if (hour < 0) {
            return Math.min(hours - 1, Math.floorMod(hour, DAY));
        }
        int past = hour - hours;
        return past < 0 ? hour : Math.max(0, hours - DAY) + past % Math.min(DAY, hours);
    }

    private static double weight(int hour, int hours) {
        if (hour < hours) {
            return 1;
        }
        return hours < DAY ? 0 : Math.pow(DAY_TO_DAY, (hour - hours + 1) / (double) DAY);
    }

    private static double[] mix(double[] given, double[] usual, int[] from, double[] weight) {
        double[] mixed = new double[usual.length];
        for (int h = 0; h < mixed.length; h++) {
            double last = given.length == 0 ? usual[h] : given[from[h]];
            mixed[h] = usual[h] + (last - usual[h]) * weight[h];
        }
        return mixed;
    }

    private static Optional<String> warning(HourlyAir given, HourGrid grid) {
        Instant end = given.end();
        if (!end.isBefore(grid.end())) {
            return Optional.empty();
        }
        return Optional.of("temperature, wind and sky end at "
                + end
                + "; to "
                + grid.end()
                + " its last day fades into the month's usual course");
    }
}
