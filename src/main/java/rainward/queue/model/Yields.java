package rainward.queue.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.Job;
import rainward.queue.problem.OpenStages;
import rainward.queue.problem.PlanProblem;
import rainward.queue.shop.Item;
import rainward.queue.shop.Yield;

/** What fields earn by the hour, and the hours in which they may be worked. */
public final class Yields {

    private final PlanProblem problem;
    private final List<String> stocked;
    private final List<String> mixes;
    private final Map<String, Yield> yields = new HashMap<>();

    public Yields(PlanProblem problem) {
        this.problem = problem;
        stocked = problem.stockHa().keySet().stream().sorted().toList();
        mixes = Stream.concat(
                        problem.inBoxes().values().stream(),
                        problem.jobs().stream()
                                .flatMap(job -> job.options().stream())
                                .map(Job.MixOption::mix))
                .distinct()
                .sorted()
                .toList();
    }

    /** Hectares of each limited mix, by name. */
    double[] stock() {
        return stocked.stream().mapToDouble(m -> problem.stockHa().get(m)).toArray();
    }

    /** What a machine holds, as an index; below zero: nothing. */
    int held(Machine machine) {
        return Optional.ofNullable(problem.inBoxes().get(machine.name()))
                .map(mixes::indexOf)
                .orElse(-1);
    }

    Yield of(Job job) {
        return yields.computeIfAbsent(job.name(), n -> reckoned(job));
    }

    private Yield reckoned(Job job) {
        double areaHa = job.field().field().areaHa();
        double kept = keptWorth(job);
        List<Yield.Option> options = job.options().stream()
                .map(o -> new Yield.Option(
                        Arrays.stream(o.worth()).map(w -> Math.max(0, w - kept)).toArray(),
                        stocked.indexOf(o.mix()),
                        areaHa,
                        mixes.indexOf(o.mix())))
                .toList();
        return new Yield(job.weightHa(), options);
    }

    /** What the field is worth as it lies if its seed is kept: seeding earns what is above it. */
    double keptWorth(Job job) {
        boolean ready = OpenStages.of(job).readyUntil(problem.horizon().to());
        return ready ? job.kept().readyWorth() : job.kept().rawWorth();
    }

    /** What making it ready earns though its seed is kept. */
    Item.Keeping keeping(Job job) {
        double more = job.kept().readyWorth() - keptWorth(job);
        return new Item.Keeping(
                more * job.weightHa(),
                HorizonMinutes.of(problem.horizon()).notAfter(problem.horizon().to()));
    }

    /** Hours in which an operation must not go on; seeding where nothing is worth sowing, too. */
    BitSet closed(Job job, Operation operation) {
        BitSet closed =
                (BitSet) job.stopped().getOrDefault(operation, new BitSet()).clone();
        if (operation == Operation.SEED) {
            Yield yield = of(job);
            for (int h = 0; h < problem.hours(); h++) {
                if (!yield.anyIn(h)) {
                    closed.set(h);
                }
            }
        }
        return closed;
    }

    /** Spans of minutes between closed hours. */
    static int[][] openSpans(BitSet closed, int hours) {
        List<int[]> spans = new ArrayList<>();
        for (int from = closed.nextClearBit(0); from < hours; ) {
            int to = closed.nextSetBit(from);
            to = to < 0 ? hours : Math.min(to, hours);
            spans.add(new int[] {60 * from, 60 * to});
            from = closed.nextClearBit(to);
        }
        return spans.toArray(int[][]::new);
    }
}
