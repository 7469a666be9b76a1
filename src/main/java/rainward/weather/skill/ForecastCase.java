package rainward.weather.skill;

import rainward.farm.Require;

/**
 * One forecast chance of rain with what came of it.
 *
 * @param leadHours from issue to the start of the period, not below zero [h]
 * @param probability forecast, 0 to 1
 * @param wet at least 0.254 mm was observed in the period
 */
public record ForecastCase(double leadHours, double probability, boolean wet) {

    public ForecastCase {
        Require.notNegative("leadHours", leadHours);
        Require.inRange("probability", probability, 0, 1);
    }

    /** 1 where it was wet, else 0. */
    double outcome() {
        return wet ? 1 : 0;
    }
}
