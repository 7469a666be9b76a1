package rainward.weather.trace;

import java.time.Duration;
import java.time.Instant;
import rainward.farm.Require;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;

/**
 * What the weather may do at one point: many equally likely hourly courses of rain, with air and
 * sun riding along. Arrays are {@code [hour][trace]}, traces innermost, so that loops over traces
 * vectorise.
 *
 * @param air air, wind and sky, the same on all traces
 * @param sun radiation and evaporation demand by hour, before rain clouds are counted
 * @param rainMm rain in each hour [mm]
 * @param peak30MmPerH greatest 30-minute intensity in each hour [mm/h]
 */
public record Traces(
        HourlyAir air, EvaporationDemand sun, double[][] rainMm, double[][] peak30MmPerH) {

    /**
     * Greatest 30-minute intensity over the hour's mean intensity, Yin, Xie, Nearing and Wang 2007
     * (Catena 70:306-312), from fixed 60-minute data of 456 storms.
     */
    public static final double PEAK_30_OVER_HOUR = 1.668;

    public Traces {
        Require.that(rainMm.length == air.hours(), "rain hours differ from air hours");
        Require.that(peak30MmPerH.length == air.hours(), "intensity hours differ from air hours");
        Require.that(rainMm.length > 0 && rainMm[0].length > 0, "no trace");
    }

    public Instant start() {
        return air.start();
    }

    public int hours() {
        return rainMm.length;
    }

    /** How many traces. */
    public int count() {
        return rainMm[0].length;
    }

    /** Index of the hour that holds an instant; below zero or past the end where it is outside. */
    public int hourOf(Instant instant) {
        return (int) Math.floorDiv(Duration.between(start(), instant).toSeconds(), 3600);
    }

    /** Start of hour {@code hour}. */
    public Instant timeOf(int hour) {
        return start().plus(Duration.ofHours(hour));
    }
}
