package rainward.soil.heat;

/** Plain passes over the traces of one layer, shaped so that they vectorise or at least overlap. */
public final class Traverse {

    private Traverse() {}

    /** Mean over traces; four sums, because one would wait for itself at every step. */
    public static double mean(double[] values) {
        int n = values.length;
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = 0;
        for (; i + 3 < n; i += 4) {
            a += values[i];
            b += values[i + 1];
            c += values[i + 2];
            d += values[i + 3];
        }
        for (; i < n; i++) {
            a += values[i];
        }
        return (a + b + (c + d)) / n;
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
