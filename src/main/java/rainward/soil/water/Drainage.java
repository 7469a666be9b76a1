package rainward.soil.water;

import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;

/**
 * Water that leaves a layer under gravity in an hour with unit gradient. With {@code K = Ks s^n}
 * the exact loss of a layer that gets none is {@code w (1 - (1 + (n - 1) K t / w)^(-1/(n - 1)))}.
 * Seen as a function of K it is smooth and concave, and {@code K (1 + b K) / (1 + K (c + d K))}
 * goes through it at three points; so an hour of drainage, however steep, costs one division and no
 * power.
 */
public final class Drainage {

    /** Conductivities, as shares of the saturated one, at which the curve is met. */
    private static final double[] MET_AT = {1, 0.1, 0.005};

    public final double b;
    public final double c;
    public final double d;

    /**
     * Fits the curve of a layer.
     *
     * @param poreMm pore space [mm]
     * @param saturatedMmPerH Ks [mm/h]
     * @param exponent n, from wetness to conductivity
     */
    public Drainage(double poreMm, double saturatedMmPerH, double exponent) {
        double[][] rows = new double[MET_AT.length][];
        double[] right = new double[MET_AT.length];
        for (int j = 0; j < rows.length; j++) {
            double k = saturatedMmPerH * MET_AT[j];
            double loss = lossMm(k, poreMm, saturatedMmPerH, exponent);
            rows[j] = new double[] {k, -loss, -loss * k};
            right[j] = loss / k - 1;
        }
        double[] fitted = new LUDecomposition(MatrixUtils.createRealMatrix(rows))
                .getSolver()
                .solve(MatrixUtils.createRealVector(right))
                .toArray();
        this.b = fitted[0];
        this.c = fitted[1];
        this.d = fitted[2];
    }

    /** Loss of an hour, exact [mm]. */
    public static double lossMm(
            double kMmPerH, double poreMm, double saturatedMmPerH, double exponent) {
        double water = poreMm * Math.pow(kMmPerH / saturatedMmPerH, 1 / exponent);
        double run = 1 + (exponent - 1) * kMmPerH / water;
        return water * (1 - Math.pow(run, -1 / (exponent - 1)));
    }

    /** Loss of an hour by the curve that stands for it [mm]. */
    public double fittedMm(double kMmPerH) {
        return kMmPerH * (1 + b * kMmPerH) / (1 + kMmPerH * (c + d * kMmPerH));
    }
}
