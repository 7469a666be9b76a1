package rainward.soil.water;

/** Plain passes over the traces of one layer, shaped so that they vectorise or at least overlap. */
public final class Traverse {

    private Traverse() {}

    /**
     * Mean over traces, by eight running sums: one alone would wait for itself at every step, and
     * the compiler may not split it.
     *
     * @param values one a trace
     */
    public static double mean(double[] values) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        double e = 0;
        double f = 0;
        double g = 0;
        double h = 0;
        int i = 0;
        for (; i + 7 < values.length; i += 8) {
            a += values[i];
            b += values[i + 1];
            c += values[i + 2];
            d += values[i + 3];
            e += values[i + 4];
            f += values[i + 5];
            g += values[i + 6];
            h += values[i + 7];
        }
        double rest = 0;
        for (; i < values.length; i++) {
            rest += values[i];
        }
        return (rest + ((a + b) + (c + d)) + ((e + f) + (g + h))) / values.length;
    }

    /**
     * The greater of zero and a number, exact and without a branch: half of the sum of it and its
     * amount. Where loops vectorise that is three operations; {@link Math#max(double, double)}
     * takes three times as many, since it looks for NaN and for the sign of zero.
     */
    public static double positive(double value) {
        return 0.5 * (value + Math.abs(value));
    }

    /** The lesser of two numbers to rounding, by {@link #positive}. */
    public static double lesser(double one, double other) {
        return one - positive(one - other);
    }

    /** The greater of two numbers to rounding, by {@link #positive}. */
    public static double greater(double one, double other) {
        return one + positive(other - one);
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
