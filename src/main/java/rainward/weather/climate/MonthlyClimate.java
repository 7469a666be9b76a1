package rainward.weather.climate;

import java.time.Month;
import rainward.farm.Require;
import rainward.weather.rain.RainAmount;

/**
 * What a month of a region is usually like; rows of {@code shared/climate.csv}.
 *
 * @param month of the year
 * @param wetDayFraction share of days with at least 0.254 mm, 0 to 1
 * @param meanWetDayMm mean rain of such a day [mm]
 * @param airTempMinC mean of the days' lowest [C]
 * @param airTempMaxC mean of the days' highest [C]
 */
public record MonthlyClimate(
        Month month,
        double wetDayFraction,
        double meanWetDayMm,
        double airTempMinC,
        double airTempMaxC) {

    /**
     * How long one spell of rain lasts, for turning days into shorter periods. Assumed, no source;
     * at 2 or 6 h the mean of a wet quarter day moves by less than a sixth [h].
     */
    private static final double SPELL_HOURS = 4;

    public MonthlyClimate {
        Require.inRange("wetDayFraction", wetDayFraction, 0, 0.98);
        Require.inRange("meanWetDayMm", meanWetDayMm, 0.254, 100);
        Require.inRange("airTempMinC", airTempMinC, -60, 50);
        Require.inRange("airTempMaxC", airTempMaxC, airTempMinC, 55);
    }

    /**
     * Chance that a period is wet, spells of rain beginning at random (Poisson): {@code 1 - exp(-r
     * (L + D))} with spell length D and the rate r that gives the month's wet days.
     *
     * @param hours length L of the period, above 0 [h]
     * @return 0 to 1
     */
    public double wetChance(double hours) {
        double rate = -Math.log1p(-wetDayFraction) / (24 + SPELL_HOURS);
        return -Math.expm1(-rate * (hours + SPELL_HOURS));
    }

    /**
     * Mean rain of a wet period, so that mean rain in an hour is the month's whatever the length.
     *
     * @param hours length of the period, above 0 [h]
     * @return given that it is wet, at least 0.254 [mm]
     */
    public double meanWetMm(double hours) {
        double chance = wetChance(hours);
        return chance <= 0
                ? meanWetDayMm
                : Math.max(RainAmount.MEASURABLE_MM, meanDayMm() * hours / 24 / chance);
    }

    /** Mean rain of a day, dry days counted in [mm]. */
    public double meanDayMm() {
        return wetDayFraction * meanWetDayMm;
    }
}
