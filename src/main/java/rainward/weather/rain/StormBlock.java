package rainward.weather.rain;

/**
 * How the rain of a wet period falls: one storm of 1 to 6 whole hours, short ones the commonest,
 * anywhere in its part of the period, with a triangular course that peaks after 0.375 of its
 * duration (Yen and Chow 1980, from memory). The spread of durations is our own assumption, no
 * source.
 */
public final class StormBlock {

    /** A storm's longest duration; summer rain seldom lasts longer at a point [h]. */
    public static final int LONGEST_H = 6;

    private static final double PEAK_AT = 0.375;

    /** Shares of a storm by its duration and hour. */
    private static final double[][] SHARES = shares();

    private StormBlock() {}

    private static double[][] shares() {
        double[][] shares = new double[LONGEST_H + 1][];
        for (int hours = 1; hours <= LONGEST_H; hours++) {
            shares[hours] = new double[hours];
            for (int h = 0; h < hours; h++) {
                shares[hours][h] = mass((h + 1.0) / hours) - mass(h / (double) hours);
            }
        }
        return shares;
    }

    /** Share of a triangular storm that has fallen by a share of its duration. */
    static double mass(double along) {
        return along <= PEAK_AT
                ? along * along / PEAK_AT
                : 1 - (1 - along) * (1 - along) / (1 - PEAK_AT);
    }

    /**
     * Duration of a storm: the square of a uniform number over the hours that fit, 2.6 h in the
     * mean where 6 fit.
     *
     * @param uniform 0 to below 1
     * @param fit hours that it may last, at least 1 [h]
     * @return 1 to {@code fit} [h]
     */
    public static int hours(double uniform, int fit) {
        return 1 + (int) (uniform * uniform * fit);
    }

    /** Shares of each hour of a storm; they add up to 1. */
    public static double[] of(int hours) {
        return SHARES[hours];
    }
}
