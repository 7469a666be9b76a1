package rainward.replay.truth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.GammaDistribution;
import rainward.farm.GeoPoint;
import rainward.soil.verify.StationDay;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.Climate;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.climate.TempRange;
import rainward.weather.rain.RainAmount;

/**
 * Days that nobody observed: rain by a chain-dependent process (Katz 1977), a first-order Markov
 * chain of wet and dry days that keeps the month's share of wet days, with gamma amounts; warmth by
 * a first-order autoregression around the month's mean, cooler on wet days (after Richardson 1981;
 * its three figures from memory).
 */
public final class InventedStation {

    /** Lag-one correlation of wet days, order of eastern stations, from memory. */
    private static final double WET_AFTER_WET = 0.2;

    /** Of the gamma distribution, as for traces. */
    private static final double SHAPE = 0.75;

    private static final double WARMTH_LAG = 0.65;
    private static final double WARMTH_SPREAD_C = 3.5;
    private static final double WET_COOLING_C = 2.5;

    private InventedStation() {}

    /**
     * A year of days.
     *
     * @param climate of the region
     * @param place on the ground
     * @param year of the calendar
     * @param seed same seed, same days
     */
    public static StationYear of(Climate climate, GeoPoint place, int year, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<StationDay> days = new ArrayList<>();
        boolean wet = false;
        double warmth = 0;
        LocalDate first = LocalDate.of(year, 1, 1);
        for (LocalDate day = first; day.getYear() == year; day = day.plusDays(1)) {
            MonthlyClimate month = climate.on(day);
            wet = random.nextDouble() < chance(month.wetDayFraction(), wet);
            warmth = WARMTH_LAG * warmth
                    + Math.sqrt(1 - WARMTH_LAG * WARMTH_LAG) * random.nextGaussian();
            days.add(day(day, month, new Drawn(wet, warmth, random.nextDouble())));
        }
        return new StationYear("invented " + climate.region() + " " + seed, place, days);
    }

    /** Chance of a wet day after a wet or a dry one; in the long run a share p is wet. */
    static double chance(double wetFraction, boolean afterWet) {
        return wetFraction * (1 - WET_AFTER_WET) + (afterWet ? WET_AFTER_WET : 0);
    }

    /** Amount of a wet day below which a share of wet days lies [mm]. */
    private static double wetMm(double meanMm, double fraction) {
        double aboveMm = Math.max(0.05, meanMm - RainAmount.MEASURABLE_MM);
        return RainAmount.MEASURABLE_MM
                + GammaDistribution.of(SHAPE, aboveMm / SHAPE)
                        .inverseCumulativeProbability(Math.min(0.999999, fraction));
    }

    /** What was drawn for a day: its rain, its warmth and where its amount lies among wet days. */
    private record Drawn(boolean wet, double warmthFactor, double amountFraction) {}

    private static StationDay day(LocalDate day, MonthlyClimate month, Drawn drawn) {
        double mm = drawn.wet() ? wetMm(month.meanWetDayMm(), drawn.amountFraction()) : 0;
        // Wet days are cooler and dry ones warmer, so that the month keeps its mean.
        double shift = WARMTH_SPREAD_C * drawn.warmthFactor()
                - WET_COOLING_C * ((drawn.wet() ? 1 : 0) - month.wetDayFraction());
        double low = month.airTempMinC() + shift;
        DailyWeather weather = new DailyWeather(
                day,
                Optional.of(new TempRange(low, Math.max(low + 2, month.airTempMaxC() + shift))),
                OptionalDouble.of(mm),
                DailyWeather.Sky.UNKNOWN);
        return new StationDay(weather, OptionalDouble.empty(), OptionalDouble.empty());
    }
}
