package rainward.readiness;

import java.util.Optional;
import rainward.weather.trace.Traces;

/** Looks for rain that would start the seed, over all traces. */
final class RainAhead {
    /** A useful rain falls within this time [h]. */
    private static final int RAIN_HOURS = 12;

    /** What follows the first rain within this time belongs to it [h]. */
    private static final int STORM_HOURS = 24;

    private RainAhead() {}

    static Figures.Rain of(Traces traces, int fromHour, ReadinessRules rules) {
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
        Optional<Figures.FirstRain> first = wet == 0
                ? Optional.empty()
                : Optional.of(first(
                        traces, Figures.Range.of(arrivals, wet), Figures.Range.of(amounts, wet)));
        return new Figures.Rain(wet / count, hard / count, first);
    }

    private static Figures.FirstRain first(
            Traces traces, Figures.Range arrivalHour, Figures.Range amountMm) {
        return new Figures.FirstRain(
                traces.timeOf((int) arrivalHour.low()),
                traces.timeOf((int) arrivalHour.middle()),
                traces.timeOf((int) arrivalHour.high()),
                amountMm);
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
}
