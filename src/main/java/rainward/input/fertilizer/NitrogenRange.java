package rainward.input.fertilizer;

import rainward.farm.Require;

/**
 * Nitrogen that a kind of crop is given; no soil test tells it.
 *
 * @param lowKgPerHa low end of the advice [kg/ha]
 * @param highKgPerHa high end [kg/ha]
 */
public record NitrogenRange(double lowKgPerHa, double highKgPerHa) {

    public NitrogenRange {
        Require.notNegative("lowKgPerHa", lowKgPerHa);
        Require.inRange("highKgPerHa", highKgPerHa, lowKgPerHa, 1_000);
    }
}
