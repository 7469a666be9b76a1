package rainward.input.fertilizer;

import rainward.farm.Require;

/**
 * A fertilizer by its grade.
 *
 * @param name what the crew calls it
 * @param nitrogenFraction share of N by weight
 * @param phosphateFraction share of P2O5
 * @param potashFraction share of K2O
 */
public record Product(
        String name, double nitrogenFraction, double phosphateFraction, double potashFraction) {

    public Product {
        Require.named("product", name);
        Require.inRange("nitrogenFraction", nitrogenFraction, 0, 1);
        Require.inRange("phosphateFraction", phosphateFraction, 0, 1);
        Require.inRange("potashFraction", potashFraction, 0, 1);
        Require.inRange(
                name + ": grade", nitrogenFraction + phosphateFraction + potashFraction, 0.001, 1);
    }

    /** A product by the three numbers on its label, for instance 18-46-0 [%]. */
    public static Product ofGrade(String name, double nPct, double p2o5Pct, double k2oPct) {
        return new Product(name, nPct / 100, p2o5Pct / 100, k2oPct / 100);
    }

    double[] inOrder() {
        return new double[] {nitrogenFraction, phosphateFraction, potashFraction};
    }

    /**
     * A product that can be had.
     *
     * @param product by its grade
     * @param usdPerKg what it costs [USD/kg]
     * @param onHandKg how much there is; infinite where it can be bought [kg]
     */
    public record Offer(Product product, double usdPerKg, double onHandKg) {

        public Offer {
            Require.notNegative("usdPerKg", usdPerKg);
            Require.inRange("onHandKg", onHandKg, 0, Double.POSITIVE_INFINITY);
        }
    }
}
