package rainward.queue.pace;

import java.time.Duration;
import java.time.Instant;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.IntPredicate;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.Require;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.farm.Window;
import rainward.soil.SoilRun;
import rainward.weather.rain.RainAmount;
import rainward.weather.trace.Traces;

/**
 * Hours of the horizon in which a field must not be worked, out of the traces.
 *
 * @param stopped by operation
 * @param firmedByRain hours in which seeding may end so that a fair rain firms the seedbed in time
 * @param unworkable hours in which the top of the soil is not fit to till or sow
 */
public record StoppedHours(Map<Operation, BitSet> stopped, BitSet firmedByRain, BitSet unworkable) {

    /** Rain of that much in an hour stops work; common practice, no source [mm]. */
    private static final double STOPPING_MM = 1;

    private static final Duration FIRMING_DAYS = Duration.ofDays(3);

    public StoppedHours {
        stopped = Map.copyOf(stopped);
    }

    /**
     * How sure the crew wants to be.
     *
     * @param confidenceFraction share of traces in which an hour must be fit, 0 to 1
     * @param fairRainMm rain within a day that settles a seedbed as a roller would [mm]
     */
    public record Caution(double confidenceFraction, double fairRainMm) {

        /** Fit in six of ten traces; 10 mm. Both are our choice, no source. */
        public static final Caution USUAL = new Caution(0.6, 10);

        public Caution {
            Require.inRange("confidenceFraction", confidenceFraction, 0.01, 1);
            Require.positive("fairRainMm", fairRainMm);
        }
    }

    /**
     * Reads a field's traces.
     *
     * <p>A stage is stopped in an hour where the soil is workable, the hour itself without stopping
     * rain, and the hours after it without measurable rain for as long as its label asks, in fewer
     * than the wanted share of traces; or where the wind is outside its limits. Hours before the
     * traces begin are not judged; after they end, the last hour goes on.
     *
     * @param recipe whose stages are judged; two with the same operation are judged together
     * @param traces weather at the field
     * @param soil its ground on the same hours and traces
     * @param horizon hours that are planned
     * @param caution how sure to be
     * @return stopped hours by operation
     */
    public static StoppedHours of(
            Recipe recipe, Traces traces, SoilRun soil, Window horizon, Caution caution) {
        Judge judge = new Judge(traces, soil, horizon.from(), caution);
        int hours = (int) ((horizon.length().toMinutes() + 59) / 60);
        Map<Operation, BitSet> stopped = new EnumMap<>(Operation.class);
        BitSet firmed = new BitSet();
        BitSet unworkable = hours(hours, judge::unworkable);
        for (Stage stage : recipe.stages()) {
            StageLimits limits = stage.limits();
            stopped.computeIfAbsent(stage.operation(), o -> new BitSet())
                    .or(hours(hours, h -> judge.stops(limits, unworkable, h)));
            if (limits.rainDoesIt()) {
                Duration within = stage.greatestWait().orElse(FIRMING_DAYS);
                firmed.or(hours(hours, h -> judge.firms(h, (int) within.toHours())));
            }
        }
        return new StoppedHours(stopped, firmed, unworkable);
    }

    private static BitSet hours(int count, IntPredicate holds) {
        BitSet hours = new BitSet(count);
        for (int h = 0; h < count; h++) {
            hours.set(h, holds.test(h));
        }
        return hours;
    }

    /** Judges one hour at a time. */
    private record Judge(Traces traces, SoilRun soil, Instant from, Caution caution) {

        /** Hour of the traces for hour {@code h} of the horizon; below zero before they begin. */
        private int traceHour(int h) {
            int hour = traces.hourOf(from.plus(Duration.ofHours(h)));
            return Math.min(hour, traces.hours() - 1);
        }

        boolean stops(StageLimits limits, BitSet unworkable, int h) {
            int hour = traceHour(h);
            if (hour < 0) {
                return false;
            }
            double windMps = traces.air().windMps()[hour];
            boolean wind = windMps > limits.greatestWindMps().orElse(Double.MAX_VALUE)
                    || windMps < limits.leastWindMps().orElse(0);
            int dryHours = (int) ((limits.dryAfter().toMinutes() + 59) / 60);
            return wind
                    || (limits.workableSoil() && unworkable.get(h))
                    || dryShare(hour, dryHours) < caution.confidenceFraction();
        }

        boolean unworkable(int h) {
            return traceHour(h) >= 0 && workableShare(h) < caution.confidenceFraction();
        }

        private double dryShare(int hour, int dryHours) {
            int last = Math.min(hour + dryHours, traces.hours() - 1);
            int dry = 0;
            for (int t = 0; t < traces.count(); t++) {
                double mm = 0;
                for (int h = hour; h <= last && dryHours > 0; h++) {
                    mm += traces.rainMm()[h][t];
                }
                dry += mm < RainAmount.MEASURABLE_MM && traces.rainMm()[hour][t] < STOPPING_MM
                        ? 1
                        : 0;
            }
            return (double) dry / traces.count();
        }

        private double workableShare(int h) {
            long since = Duration.between(soil.start(), from).toHours() + h;
            if (since < 0) {
                return 1;
            }
            boolean[] fit = soil.surface().workable()[(int) Math.min(since, soil.hours() - 1)];
            int count = 0;
            for (boolean f : fit) {
                count += f ? 1 : 0;
            }
            return (double) count / fit.length;
        }

        boolean firms(int h, int within) {
            int hour = traceHour(h);
            if (hour < 0) {
                return false;
            }
            int firmed = 0;
            for (int t = 0; t < traces.count(); t++) {
                firmed += fairRain(t, hour + 1, Math.min(hour + within, traces.hours())) ? 1 : 0;
            }
            return firmed >= caution.confidenceFraction() * traces.count();
        }

        private boolean fairRain(int trace, int first, int end) {
            double dayMm = 0;
            for (int h = first; h < end; h++) {
                dayMm += traces.rainMm()[h][trace];
                if (h - first >= 24) {
                    dayMm -= traces.rainMm()[h - 24][trace];
                }
                if (dayMm >= caution.fairRainMm()) {
                    return true;
                }
            }
            return false;
        }
    }
}
