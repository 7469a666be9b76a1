package rainward.cycle;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import rainward.cycle.ground.GroundMemory;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Effort;
import rainward.stand.StandOutlook;
import rainward.stand.model.StandModel;
import rainward.weather.trace.Foreseen;
import rainward.weather.trace.PointTraces;
import rainward.window.WindowDecider;

/** Measures one round part by part, in the order in which {@link Cycle#run} goes through them. */
public final class CycleBench {

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

    private Cycle.Result run(CycleInput input, Effort effort) {
        Map<String, PointTraces> drawn = part("traces", () -> Sky.drawn(input));
        Map<String, Foreseen> weather = part("traces", () -> Sky.foreseen(input, drawn));
        List<FieldReckoning> fields =
                part("soil", () -> new Reckoning(input, GroundMemory.none()).fields(weather));
        // Soil and stand of a field are reckoned in one go; the stands once more tell them apart.
        List<StandOutlook> stands = part("stand", () -> stands(fields));
        partMs.merge("soil", -partMs.getOrDefault("stand", 0.0), Double::sum);
        if (stands.isEmpty()) {
            throw new IllegalArgumentException("no field of the round can be reckoned");
        }
        Cycle cycle = new Cycle(input, drawn, fields);
        PlanProblem problem = part("plan", cycle::problem);
        Plan plan = part("plan", () -> Planner.plan(problem, effort));
        WindowDecider.Decided windows =
                part("windows", () -> new Watching(input).windows(fields, plan));
        Outlook outlook =
                part("readiness", () -> cycle.outlook(plan, windows.next().open()));
        return new Cycle.Result(outlook, problem, windows);
    }

    private static List<StandOutlook> stands(List<FieldReckoning> fields) {
        StandModel model = StandModel.usual();
        return fields.parallelStream()
                .flatMap(field -> field.questions().stream())
                .map(model::outlook)
                .toList();
    }

    private <T> T part(String name, Supplier<T> work) {
        long before = nanos.getAsLong();
        T done = work.get();
        partMs.merge(name, (nanos.getAsLong() - before) / 1e6, Double::sum);
        return done;
    }
}
