package rainward.input.lime;

import rainward.farm.Require;

/**
 * What a recommendation asks for, in lime of the quality that it is written for.
 *
 * @param rateKgPerHa of that lime [kg/ha]; zero where none is needed
 * @param standard quality and depth that the rate is meant for
 */
public record LimeNeed(double rateKgPerHa, Standard standard) {

    public LimeNeed {
        Require.notNegative("rateKgPerHa", rateKgPerHa);
    }

    /** Pure, fine calcium carbonate that does the same work [kg/ha]. */
    public double effectiveKgPerHa() {
        return rateKgPerHa * standard.effectiveFraction();
    }

    /**
     * Rate of a lime at hand (Penn State: recommendation x 100 / CCE).
     *
     * @param effectiveFraction of that lime, as {@link LimeQuality#effectiveFraction}
     * @param depthCm that it is mixed in, or sod limed on the surface acts to [cm]
     */
    public double rateOf(double effectiveFraction, double depthCm) {
        Require.positive("effectiveFraction", effectiveFraction);
        Require.inRange("depthCm", depthCm, 2, 40);
        return effectiveKgPerHa() / effectiveFraction * depthCm / standard.depthCm();
    }

    /**
     * What a rate is meant for.
     *
     * @param effectiveFraction neutralizing share of the lime, 0 to 1
     * @param depthCm of soil that is limed [cm]
     */
    public record Standard(double effectiveFraction, double depthCm) {

        public Standard {
            Require.inRange("effectiveFraction", effectiveFraction, 0.1, 1.8);
            Require.inRange("depthCm", depthCm, 5, 40);
        }
    }
}
