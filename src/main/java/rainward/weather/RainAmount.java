package rainward.weather;

import rainward.farm.Require;
import rainward.farm.Window;

/**
 * Expected liquid total of an interval, dry outcomes counted in.
 *
 * @param window the interval
 * @param amountMm total over the whole interval [mm]
 */
public record RainAmount(Window window, double amountMm) {

    public RainAmount {
        Require.inRange("amountMm", amountMm, 0, 1000);
    }
}
