package rainward.weather.rain;

import rainward.farm.Require;
import rainward.farm.Window;

/**
 * Chance of measurable rain (0.01 in, 0.254 mm) at a point in an interval.
 *
 * @param window the interval
 * @param probability 0 to 1
 */
public record RainChance(Window window, double probability) {

    public RainChance {
        Require.inRange("probability", probability, 0, 1);
    }
}
