package rainward.cycle;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import rainward.cycle.ground.GroundMemory;
import rainward.queue.search.Effort;
import rainward.stand.StandOutlook;
import rainward.stand.model.StandModel;

/** Measures one round part by part, as {@link Cycle#run} goes through them. */
public final class CycleBench implements Cycle.Parts {

    private final LongSupplier nanos;
    private final Map<String, Double> partMs = new LinkedHashMap<>();

    private CycleBench(LongSupplier nanos) {
        this.nanos = nanos;
    }

    /**
     * A round with its times.
     *
     * @param partMs time of each part [ms], by name, in order
     * @param result the same as a round that is not measured gives
     */
    public record Timed(Map<String, Double> partMs, Cycle.Result result) {}

    /**
     * Runs a round.
     *
     * @param input fields, weather, rules and memory
     * @param effort of the planner
     * @param nanos a clock from outside; the round knows none
     */
    public static Timed run(CycleInput input, Effort effort, LongSupplier nanos) {
        CycleBench bench = new CycleBench(nanos);
        Cycle.Result result = bench.run(input, effort);
        return new Timed(bench.partMs, result);
    }

    /** Soil and stand of a field are reckoned in one go; the stands once more tell them apart. */
    private Cycle.Result run(CycleInput input, Effort effort) {
        Cycle cycle = Cycle.of(input, GroundMemory.none(), this);
        if (go("stand", () -> stands(cycle.fields())).isEmpty()) {
            throw new IllegalArgumentException("no field of the round can be reckoned");
        }
        partMs.merge(GROUND, -partMs.getOrDefault("stand", 0.0), Double::sum);
        return cycle.whole(effort, this);
    }

    private static List<StandOutlook> stands(List<FieldReckoning> fields) {
        StandModel model = StandModel.usual();
        return fields.parallelStream()
                .flatMap(field -> field.questions().stream())
                .map(model::outlook)
                .toList();
    }

    @Override
    public <T> T go(String name, Supplier<T> work) {
        long before = nanos.getAsLong();
        T done = work.get();
        partMs.merge(name, (nanos.getAsLong() - before) / 1e6, Double::sum);
        return done;
    }
}
