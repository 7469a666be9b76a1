package rainward.weather.trace;

import java.util.Arrays;

/**
 * Orders traces by a value, the highest first. Only the top of a standard normal field is asked for
 * as a rule, some thousand times in a forecast of hours: values fall into bins even in height,
 * which leaves them nearly in order, and are then put in order by insertion.
 */
final class WettestFirst {

    private static final double LOWEST = Double.NEGATIVE_INFINITY;
    private static final int TRACE_BITS = 0xFFFF;
    private static final int BINS = 256;

    /** Hardly a standard normal value lies above; one that does shares the last bin. */
    private static final double TOP = 3.5;

    private final long[] order;
    private final long[] loose;
    private final int[] end = new int[BINS + 1];
    private int ranked;

    WettestFirst(int traces) {
        order = new long[traces];
        loose = new long[traces];
    }

    /**
     * Puts traces in order.
     *
     * @param values one a trace
     * @param wanted how many from the top are needed
     * @param cut values up to it are left out at first; where too few are left, none is
     */
    void rank(double[] values, int wanted, double cut) {
        if (cut > LOWEST && cut < TOP) {
            bin(values, cut);
            if (ranked >= wanted) {
                insert();
                return;
            }
        }
        ranked = values.length;
        for (int n = 0; n < ranked; n++) {
            order[n] = key(values[n], n);
        }
        Arrays.sort(order);
    }

    /** The trace that holds a place from the top. */
    int trace(int rank) {
        return (int) order[ranked - 1 - rank] & TRACE_BITS;
    }

    private void bin(double[] values, double cut) {
        double perUnit = BINS / (TOP - cut);
        Arrays.fill(end, 0);
        int count = 0;
        for (int n = 0; n < values.length; n++) {
            if (values[n] > cut) {
                loose[count++] = key(values[n], n);
                end[bin(values[n], cut, perUnit) + 1]++;
            }
        }
        for (int b = 1; b <= BINS; b++) {
            end[b] += end[b - 1];
        }
        for (int i = 0; i < count; i++) {
            double value = values[(int) loose[i] & TRACE_BITS];
            order[end[bin(value, cut, perUnit)]++] = loose[i];
        }
        ranked = count;
    }

    private static int bin(double value, double cut, double perUnit) {
        return Math.min(BINS - 1, (int) ((value - cut) * perUnit));
    }

    private void insert() {
        for (int i = 1; i < ranked; i++) {
            long key = order[i];
            int to = i;
            while (to > 0 && order[to - 1] > key) {
                order[to] = order[to - 1];
                to--;
            }
            order[to] = key;
        }
    }

    /** The value in the high bits of a number, the trace in the low. */
    private static long key(double value, int trace) {
        long bits = Double.doubleToRawLongBits(value);
        long sortable = bits ^ ((bits >> 63) & Long.MAX_VALUE);
        return (sortable & ~(long) TRACE_BITS) | trace;
    }
}
