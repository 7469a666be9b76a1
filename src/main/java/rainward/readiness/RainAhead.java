package rainward.readiness;

import java.util.Arrays;
import rainward.weather.trace.Traces;

/**
 * Rain that would start the seed, over all traces.
 *
 * @param chance of a useful rain within the look ahead, 0 to 1
 * @param arrivalHour middle trace's first hour of it, counted from the start of the traces
 * @param amountMm middle trace's total over a day from its arrival [mm]
 * @param hardChance of a hard burst within the look ahead, 0 to 1
 */
record RainAhead(double chance, int arrivalHour, double amountMm, double hardChance) {
    /** A useful rain falls within this time [h]. */
    private static final int RAIN_HOURS = 12;

    /** What follows the first rain within this time belongs to it [h]. */
    private static final int STORM_HOURS = 24;

    static RainAhead of(Traces traces, int fromHour, ReadinessRules rules) {
        int end = (int) Math.min(traces.hours(), fromHour + rules.lookAhead().toHours());
        double[] arrivals = new double[traces.count()];
        double[] amounts = new double[traces.count()];
        int wet = 0;
        int hard = 0;
        for (int trace = 0; trace < traces.count(); trace++) {
            int arrival = arrival(traces, trace, fromHour, end, rules.usefulRainMm());
            if (arrival < end) {
                arrivals[wet] = arrival;
                amounts[wet] = totalMm(traces, trace, arrival, STORM_HOURS);
                wet++;
            }
            hard += hard(traces, trace, fromHour, end, rules.hardRainMmPerH()) ? 1 : 0;
        }
        double count = traces.count();
        return new RainAhead(
                wet / count, (int) middle(arrivals, wet), middle(amounts, wet), hard / count);
    }

    private static int arrival(Traces traces, int trace, int from, int end, double usefulMm) {
        for (int h = from; h < end; h++) {
            if (traces.rainMm()[h][trace] > 0
                    && totalMm(traces, trace, h, RAIN_HOURS) >= usefulMm) {
                return h;
            }
        }
        return end;
    }

    private static double totalMm(Traces traces, int trace, int from, int hours) {
        double sum = 0;
        for (int h = from; h < Math.min(traces.hours(), from + hours); h++) {
            sum += traces.rainMm()[h][trace];
        }
        return sum;
    }

    private static boolean hard(Traces traces, int trace, int from, int end, double limit) {
        for (int h = from; h < end; h++) {
            if (traces.peak30MmPerH()[h][trace] >= limit) {
                return true;
            }
        }
        return false;
    }

    private static double middle(double[] values, int count) {
        if (count == 0) {
            return 0;
        }
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return sorted[count / 2];
    }
}
