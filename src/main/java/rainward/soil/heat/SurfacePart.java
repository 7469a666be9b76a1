package rainward.soil.heat;

/**
 * A part of the surface that balances what it gains against heat to air and sky and heat into the
 * ground. Its temperature is {@code share Tground + (1 - share) Tair + gain / (skin + loss)}.
 *
 * @param skinWPerM2K conductance between its skin and the middle of the first soil layer [W/m2/K]
 * @param lossWPerM2K heat it gives off per degree above air [W/m2/K]
 */
public record SurfacePart(double skinWPerM2K, double lossWPerM2K) {

    private static final int ROUNDS = 6;

    /**
     * Finds the loss that fits the surface's own warmth, by halving steps from still layering.
     *
     * @param air what the surface meets
     * @param ground skin conductance [W/m2/K] and what it touches
     * @param gainWPerM2 net radiation at air temperature less heat of evaporation [W/m2]
     */
    public static SurfacePart settled(SurfaceHeat air, Ground ground, double gainWPerM2) {
        double below = ground.skinWPerM2K * (ground.tempC - air.airTempC());
        double warmer = 0;
        double loss = 0;
        for (int round = 0; round < ROUNDS; round++) {
            loss = air.lossWPerM2K(ground.dragCoefficient, warmer);
            double found = (gainWPerM2 + below) / (loss + ground.skinWPerM2K);
            warmer = 0.5 * (warmer + found);
        }
        return new SurfacePart(ground.skinWPerM2K, loss);
    }

    /**
     * What lies under a part.
     *
     * @param dragCoefficient of the part, {@link SurfaceHeat#drag}
     * @param skinWPerM2K conductance down to the middle of the first layer [W/m2/K]
     * @param tempC of the first layer [C]
     */
    public record Ground(double dragCoefficient, double skinWPerM2K, double tempC) {}

    /** Share of a gain at the skin that goes down, and weight of the ground in its temperature. */
    public double share() {
        return skinWPerM2K / (skinWPerM2K + lossWPerM2K);
    }

    /** Conductance from the first layer through the skin to the air [W/m2/K]. */
    public double couplingWPerM2K() {
        return share() * lossWPerM2K;
    }
}
