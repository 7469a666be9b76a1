package rainward.weather.climate;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import rainward.farm.GeoPoint;
import rainward.weather.rain.HourGrid;
import rainward.weather.sky.HourlyAir;

/**
 * Forecast air drawn out to a horizon. Past the last forecast hour the last day of the forecast
 * lives on beside the month's usual course: {@code usual + (last day - usual) r^d}, d days after
 * it. Before the first hour the same hour of the first day stands in.
 */
public final class HorizonAir {

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
    public record Drawn(HourlyAir air, Optional<String> warning) {}

    public static Drawn over(HourlyAir given, HourGrid grid, GeoPoint place, Climate climate) {
        HourlyAir usual = usual(given, grid, place, climate);
        HourlyAir air = new HourlyAir(
                grid.start(),
                drawn(given, grid, given.airTempC(), usual.airTempC()),
                drawn(given, grid, given.dewPointC(), usual.dewPointC()),
                drawn(given, grid, given.windMps(), usual.windMps()),
                drawn(given, grid, given.skyCoverFraction(), usual.skyCoverFraction()));
        return new Drawn(air, warning(given, grid));
    }

    /** The usual course of the hours after the forecast's last, as many as the horizon has. */
    private static HourlyAir usual(
            HourlyAir given, HourGrid grid, GeoPoint place, Climate climate) {
        Instant from = given.end().isAfter(grid.start()) ? given.end() : grid.start();
        int hours = (int) Math.max(0, Duration.between(from, grid.end()).toHours());
        ZoneOffset zone = ZoneOffset.ofHours((int) Math.round(place.longitudeDeg() / 15));
        var site = new DayCourse.Site(place, climate);
        return new DayCourse(zone, site, DailyWeather::unknown).over(from, hours);
    }

    private static double[] drawn(HourlyAir given, HourGrid grid, double[] values, double[] usual) {
        int lead = (int) Duration.between(given.start(), grid.start()).toHours();
        int known = grid.hours() - usual.length;
        double[] all = new double[grid.hours()];
        for (int h = 0; h < known; h++) {
            int hour = lead + h;
            all[h] =
                    values[hour < 0 ? Math.min(values.length - 1, Math.floorMod(hour, DAY)) : hour];
        }
        for (int h = known; h < all.length; h++) {
            int past = lead + h - values.length;
            all[h] = usual[h - known] + departure(values, usual, past, h - known);
        }
        return all;
    }

    /** What is left of the last day's departure from the usual; nothing of less than a day. */
    private static double departure(double[] values, double[] usual, int past, int tail) {
        if (values.length < DAY) {
            return 0;
        }
        double last = values[values.length - DAY + past % DAY];
        return (last - usual[tail]) * Math.pow(DAY_TO_DAY, (past + 1) / (double) DAY);
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
