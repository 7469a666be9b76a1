package rainward.soil.heat;

/** Plain passes over the traces of one layer, shaped so that they vectorise or at least overlap. */
public final class Traverse {

    private Traverse() {}

    /**
     * Mean over traces.
     *
     * @param values one a trace
     * @param fold scratch of at least half as many; halves are laid upon each other, which
     *     vectorises where a running sum would wait for itself
     */
    public static double mean(double[] values, double[] fold) {
        int n = values.length;
        int half = n / 2;
        for (int i = 0; i < half; i++) {
            fold[i] = values[i] + values[i + half];
        }
        int quarter = half / 2;
        for (int i = 0; i < quarter; i++) {
            fold[i] += fold[i + quarter];
        }
        int eighth = quarter / 2;
        for (int i = 0; i < eighth; i++) {
            fold[i] += fold[i + eighth];
        }
        double sum = 2 * half < n ? values[n - 1] : 0;
        sum += 2 * quarter < half ? fold[half - 1] : 0;
        sum += 2 * eighth < quarter ? fold[quarter - 1] : 0;
        for (int i = 0; i < eighth; i++) {
            sum += fold[i];
        }
        return sum / n;
    }

    public static void scale(double[] values, double factor) {
        for (int i = 0; i < values.length; i++) {
            values[i] *= factor;
        }
    }

    /** {@code here = here ownFactor + other otherFactor}. */
    public static void blend(double[] here, double ownFactor, double[] other, double otherFactor) {
        for (int i = 0; i < here.length; i++) {
            here[i] = here[i] * ownFactor + other[i] * otherFactor;
        }
    }
}
