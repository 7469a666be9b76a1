package rainward.soil.property;

/**
 * Matric potential by wetness, read from a table between points 1/2048 apart: Saxton and Rawls 2006
 * eq. [11] over the whole range, within 0.1 % where the soil is not air dry, held at -150 MPa.
 */
public final class TensionTable {

    private static final int STEPS = 2048;
    private static final double DRIEST_MPA = -150;

    private final double[] potentialMpa = new double[STEPS + 2];

    public TensionTable(Layers layers) {
        double full = -layers.matrix.tensionKpa(layers.matrix.saturationFraction()) / 1000;
        double steepness = -layers.matrix.exponentB();
        for (int k = 1; k < potentialMpa.length; k++) {
            double wetness = k / (double) STEPS;
            potentialMpa[k] = Math.max(DRIEST_MPA, full * Math.pow(wetness, steepness));
        }
        potentialMpa[0] = potentialMpa[1];
    }

    /** Matric potential at a wetness of 0 to 1 [MPa]. */
    public double potentialMpa(double wetness) {
        double at = wetness * STEPS;
        int below = (int) at;
        double low = potentialMpa[below];
        return low + (at - below) * (potentialMpa[below + 1] - low);
    }
}
