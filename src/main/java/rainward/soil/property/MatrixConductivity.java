package rainward.soil.property;

import rainward.farm.SoilTexture;

/**
 * How well the matrix conducts, against what the saturated conductivity would have it. Saturated
 * flow runs in the largest pores, which are empty as soon as the soil is not; the curve of the
 * matrix meets its own, lower, value there: {@code K = K0 s^(L + 2 + 2b)} with {@code K0} and
 * {@code L} fitted to measured unsaturated conductivity (Schaap and Leij 2000; averages of the
 * twelve texture classes by Schaap, Leij and van Genuchten 2001, from memory). Between the middles
 * of the classes values are weighted by the inverse square of the distance in sand and clay.
 *
 * <p>Leaving the largest pores out can only take away: where the fit lies above the curve of Saxton
 * and Rawls, theirs stays.
 */
public final class MatrixConductivity {

    /**
     * Texture classes: sand and clay at the middle (Saxton and Rawls 2006, table 3), log10 of the
     * saturated conductivity and of K0 in cm/d, L.
     */
    private static final double[][] CLASSES = {
        {0.88, 0.05, 2.808, 1.389, -0.930},
        {0.80, 0.05, 2.022, 1.386, -0.874},
        {0.65, 0.10, 1.583, 1.190, -0.861},
        {0.40, 0.20, 1.081, 0.568, -0.371},
        {0.20, 0.15, 1.261, 0.243, 0.365},
        {0.10, 0.05, 1.641, 0.524, 0.624},
        {0.60, 0.25, 1.120, 0.841, -1.280},
        {0.30, 0.35, 0.913, 0.699, -0.763},
        {0.10, 0.35, 1.046, 0.349, -0.156},
        {0.10, 0.45, 0.983, 0.501, -1.287},
        {0.50, 0.40, 1.055, 0.637, -3.665},
        {0.25, 0.50, 1.169, 0.472, -1.561}
    };

    /** Exponent that the curve of Saxton and Rawls has in the place of L. */
    private static final double SAXTON_L = 1;

    private MatrixConductivity() {}

    /**
     * Conductivity of the matrix over that of {@code Ks s^(3 + 2b)}.
     *
     * @param texture of the soil
     * @param wetness s at which it is asked, above 0 to 1
     * @return above 0 to 1
     */
    public static double share(SoilTexture texture, double wetness) {
        double weights = 0;
        double logShare = 0;
        double l = 0;
        for (double[] row : CLASSES) {
            double far =
                    Math.hypot(texture.sandFraction() - row[0], texture.clayFraction() - row[1]);
            double weight = 1 / (far * far + 1e-6);
            weights += weight;
            logShare += weight * (row[3] - row[2]);
            l += weight * row[4];
        }
        double share = Math.pow(10, logShare / weights);
        return Math.min(1, share * Math.pow(wetness, l / weights - SAXTON_L));
    }
}
