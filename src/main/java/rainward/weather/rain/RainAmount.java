package rainward.weather.rain;

import rainward.farm.Require;
import rainward.farm.Window;

/**
 * Expected liquid total of an interval, dry outcomes counted in.
 *
 * @param window the interval
 * @param amountMm total over the whole interval [mm]
 */
public record RainAmount(Window window, double amountMm) {

    /**
     * Least rain that counts as measurable: 0.01 in (AMS Glossary, probability of precipitation)
     * [mm].
     */
    public static final double MEASURABLE_MM = 0.254;

    public RainAmount {
        Require.inRange("amountMm", amountMm, 0, 1000);
    }
}
