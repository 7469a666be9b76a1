package rainward.input.fertilizer;

import rainward.farm.Require;

/**
 * Nutrients as labels give them.
 *
 * @param nitrogenKgPerHa N [kg/ha]
 * @param phosphateKgPerHa P2O5 [kg/ha]
 * @param potashKgPerHa K2O [kg/ha]
 */
public record Nutrients(double nitrogenKgPerHa, double phosphateKgPerHa, double potashKgPerHa) {
    public static final Nutrients NONE = new Nutrients(0, 0, 0);

    // P2O5 / 2.29 = P and K2O / 1.205 = K; the weights of the atoms give 2.2914 and 1.2046.
    private static final double PHOSPHATE_PER_PHOSPHORUS = 2.29;
    private static final double POTASH_PER_POTASSIUM = 1.205;

    public Nutrients {
        Require.notNegative("nitrogenKgPerHa", nitrogenKgPerHa);
        Require.notNegative("phosphateKgPerHa", phosphateKgPerHa);
        Require.notNegative("potashKgPerHa", potashKgPerHa);
    }

    /** From the elements N, P and K [kg/ha]. */
    public static Nutrients ofElements(double nKgPerHa, double pKgPerHa, double kKgPerHa) {
        return new Nutrients(
                nKgPerHa, pKgPerHa * PHOSPHATE_PER_PHOSPHORUS, kKgPerHa * POTASH_PER_POTASSIUM);
    }

    /** P, the element [kg/ha]. */
    public double phosphorusKgPerHa() {
        return phosphateKgPerHa / PHOSPHATE_PER_PHOSPHORUS;
    }

    /** K, the element [kg/ha]. */
    public double potassiumKgPerHa() {
        return potashKgPerHa / POTASH_PER_POTASSIUM;
    }

    public Nutrients plus(Nutrients other) {
        return new Nutrients(
                nitrogenKgPerHa + other.nitrogenKgPerHa,
                phosphateKgPerHa + other.phosphateKgPerHa,
                potashKgPerHa + other.potashKgPerHa);
    }

    double[] inOrder() {
        return new double[] {nitrogenKgPerHa, phosphateKgPerHa, potashKgPerHa};
    }
}
