package rainward.weather.trace;

import java.util.Comparator;
import java.util.stream.IntStream;

/** Spearman's rank correlation of values without ties. */
final class RankCorrelation {

    private RankCorrelation() {}

    static double of(double[] a, double[] b) {
        double[] ra = ranks(a);
        double[] rb = ranks(b);
        double squares = 0;
        for (int i = 0; i < a.length; i++) {
            squares += (ra[i] - rb[i]) * (ra[i] - rb[i]);
        }
        double n = a.length;
        return 1 - 6 * squares / (n * (n * n - 1));
    }

    private static double[] ranks(double[] values) {
        double[] ranks = new double[values.length];
        int[] order = IntStream.range(0, values.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> values[i]))
                .mapToInt(i -> i)
                .toArray();
        for (int r = 0; r < order.length; r++) {
            ranks[order[r]] = r;
        }
        return ranks;
    }
}
