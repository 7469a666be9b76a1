package rainward.soil.water;

/**
 * Wetness to half the exponent {@code B + 1} by multiplication alone, so that loops over traces
 * vectorise: conductivity and diffusivity of Saxton and Rawls follow from its square and fourth
 * power. The whole part of the exponent is written out, the rest stands in by its chord, {@code x^f
 * ~ 1 - f + f x}, which lies above the curve by less than 12 % where x is above 0.3.
 */
public final class WetnessPower {

    private final int whole;
    private final double rest;

    /**
     * For a half exponent of 1 to 8; the tension curves of table 1 of the source span 1.6 to 6.1.
     */
    public WetnessPower(double halfExponent) {
        double held = Math.max(1, Math.min(7.999, halfExponent));
        this.whole = (int) held;
        this.rest = held - whole;
    }

    /**
     * Raises the wetness of every trace.
     *
     * @param water of the layer [mm]
     * @param perPore one over its pore space [1/mm]
     * @param raised set here
     */
    public void raise(double[] water, double perPore, double[] raised) {
        switch (whole) {
            case 1 -> first(water, perPore, raised);
            case 2 -> second(water, perPore, raised);
            case 3 -> third(water, perPore, raised);
            case 4 -> fourth(water, perPore, raised);
            case 5 -> fifth(water, perPore, raised);
            case 6 -> sixth(water, perPore, raised);
            default -> seventh(water, perPore, raised);
        }
    }

    private void first(double[] water, double perPore, double[] raised) {
        double one = 1 - rest;
        double more = rest;
        for (int i = 0; i < water.length; i++) {
            double x = water[i] * perPore;
            raised[i] = (one + more * x) * x;
        }
    }

    private void second(double[] water, double perPore, double[] raised) {
        double one = 1 - rest;
        double more = rest;
        for (int i = 0; i < water.length; i++) {
            double x = water[i] * perPore;
            double x2 = x * x;
            raised[i] = (one + more * x) * x2;
        }
    }

    private void third(double[] water, double perPore, double[] raised) {
        double one = 1 - rest;
        double more = rest;
        for (int i = 0; i < water.length; i++) {
            double x = water[i] * perPore;
            double x2 = x * x;
            raised[i] = (one + more * x) * x * x2;
        }
    }

    private void fourth(double[] water, double perPore, double[] raised) {
        double one = 1 - rest;
        double more = rest;
        for (int i = 0; i < water.length; i++) {
            double x = water[i] * perPore;
            double x2 = x * x;
            raised[i] = (one + more * x) * (x2 * x2);
        }
    }

    private void fifth(double[] water, double perPore, double[] raised) {
        double one = 1 - rest;
        double more = rest;
        for (int i = 0; i < water.length; i++) {
            double x = water[i] * perPore;
            double x2 = x * x;
            double x3 = x2 * x;
            raised[i] = (one + more * x) * x2 * x3;
        }
    }

    private void sixth(double[] water, double perPore, double[] raised) {
        double one = 1 - rest;
        double more = rest;
        for (int i = 0; i < water.length; i++) {
            double x = water[i] * perPore;
            double x2 = x * x;
            double x4 = x2 * x2;
            raised[i] = (one + more * x) * x2 * x4;
        }
    }

    private void seventh(double[] water, double perPore, double[] raised) {
        double one = 1 - rest;
        double more = rest;
        for (int i = 0; i < water.length; i++) {
            double x = water[i] * perPore;
            double x2 = x * x;
            double x3 = x2 * x;
            raised[i] = (one + more * x) * x3 * x3 * x;
        }
    }
}
