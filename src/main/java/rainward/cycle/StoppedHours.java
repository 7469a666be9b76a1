package rainward.cycle;

import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.soil.SoilRun;
import rainward.weather.trace.Traces;

/** Hours in which an operation must not go on at a field: wet soil, wind, rain. */
final class StoppedHours {

    /** Rain of that much in an hour stops work that needs no workable soil as well [mm]. */
    private static final double STOPPING_RAIN_MM = 1;

    /** Rain that settles a loose bed as a roller would [mm]; common practice, no source. */
    private static final double FIRMING_RAIN_MM = 8;

    private static final int FIRMED_WITHIN_HOURS = 48;

    private final SoilRun soil;
    private final Traces traces;
    private final double confidence;
    private final int hours;

    StoppedHours(SoilRun soil, Traces traces, double confidence, int hours) {
        this.soil = soil;
        this.traces = traces;
        this.confidence = confidence;
        this.hours = hours;
    }

    /** By operation, for every stage of the recipe. */
    Map<Operation, BitSet> of(Recipe recipe) {
        Map<Operation, BitSet> stopped = new EnumMap<>(Operation.class);
        for (Stage stage : recipe.stages()) {
            stopped.computeIfAbsent(stage.operation(), o -> new BitSet(hours))
                    .or(of(stage.limits()));
        }
        return stopped;
    }

    private BitSet of(StageLimits limits) {
        BitSet stopped = new BitSet(hours);
        for (int h = 0; h < hours; h++) {
            boolean ground = limits.workableSoil() ? workableShare(h) < confidence : raining(h);
            stopped.set(h, ground || wrongWind(limits, traces.air().windMps()[h]));
        }
        return stopped;
    }

    private static boolean wrongWind(StageLimits limits, double windMps) {
        return windMps > limits.greatestWindMps().orElse(Double.POSITIVE_INFINITY)
                || windMps < limits.leastWindMps().orElse(0);
    }

    private boolean raining(int hour) {
        int wet = 0;
        for (double mm : traces.rainMm()[hour]) {
            wet += mm >= STOPPING_RAIN_MM ? 1 : 0;
        }
        return wet > (1 - confidence) * traces.count();
    }

    /** Share of traces in which the top is fit at the end of an hour, 0 to 1. */
    double workableShare(int hour) {
        int fit = 0;
        for (boolean workable : soil.surface().workable()[hour]) {
            fit += workable ? 1 : 0;
        }
        return fit / (double) traces.count();
    }

    /**
     * Hours in which seeding may end so that a fair rain firms the bed before the sun bakes it, in
     * the chosen share of traces.
     */
    BitSet firmedByRain() {
        BitSet firmed = new BitSet(hours);
        for (int h = 0; h < hours; h++) {
            int yes = 0;
            for (int t = 0; t < traces.count(); t++) {
                yes += fairRainAfter(h, t) ? 1 : 0;
            }
            firmed.set(h, yes >= confidence * traces.count());
        }
        return firmed;
    }

    private boolean fairRainAfter(int hour, int trace) {
        double mm = 0;
        for (int h = hour; h < Math.min(hour + FIRMED_WITHIN_HOURS, traces.hours()); h++) {
            mm += traces.rainMm()[h][trace];
        }
        return mm >= FIRMING_RAIN_MM;
    }

    /** First hour of the plan that is fit at the chosen confidence, or -1. */
    int firstWorkable() {
        for (int h = 0; h < hours; h++) {
            if (workableShare(h) >= confidence) {
                return h;
            }
        }
        return -1;
    }
}
