package rainward.soil;

/**
 * Water that leaves a layer under gravity in an hour with unit gradient. With {@code K = Ks s^n}
 * the exact loss of a layer that gets none is {@code w (1 - (1 + (n - 1) K t / w)^(-1/(n - 1)))};
 * as a function of K it is concave, so the least of a few of its tangents stands for it without a
 * power.
 */
final class Drainage {

    /** Tangents besides the one at zero. */
    static final int TANGENTS = 5;

    final double[] offsetMm = new double[TANGENTS];
    final double[] slopeH = new double[TANGENTS];

    Drainage(double poreMm, double saturatedMmPerH, double exponent) {
        double greatest = (exponent - 1) * saturatedMmPerH / poreMm;
        for (int j = 0; j < TANGENTS; j++) {
            double share = Math.pow(1 + greatest, -j / (double) TANGENTS);
            double k = saturatedMmPerH * share;
            double step = 1e-4 * k;
            double up = loss(k + step, poreMm, saturatedMmPerH, exponent);
            double down = loss(k - step, poreMm, saturatedMmPerH, exponent);
            slopeH[j] = (up - down) / (2 * step);
            offsetMm[j] = loss(k, poreMm, saturatedMmPerH, exponent) - slopeH[j] * k;
        }
    }

    /** Loss in one hour, exact [mm]. */
    static double loss(double kMmPerH, double poreMm, double saturatedMmPerH, double exponent) {
        double water = poreMm * Math.pow(kMmPerH / saturatedMmPerH, 1 / exponent);
        double run = 1 + (exponent - 1) * kMmPerH / water;
        return water * (1 - Math.pow(run, -1 / (exponent - 1)));
    }
}
