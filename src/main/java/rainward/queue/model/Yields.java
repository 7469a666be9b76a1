package rainward.queue.model;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rainward.farm.Operation;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;
import rainward.queue.shop.Yield;

/** What fields earn by the hour, and the hours in which they may be worked. */
public final class Yields {

    private static final int MOST_STARTS = 6;

    /** A later hour is worth trying where it is better by this factor; chosen by experiment. */
    private static final double BETTER = 1.02;

    private final PlanProblem problem;
    private final List<String> stocked;
    private final Map<String, Yield> yields = new HashMap<>();

    public Yields(PlanProblem problem) {
        this.problem = problem;
        stocked = problem.stockHa().keySet().stream().sorted().toList();
    }

    /** Hectares of each limited mix, by name. */
    double[] stock() {
        return stocked.stream().mapToDouble(m -> problem.stockHa().get(m)).toArray();
    }

    Yield of(Job job) {
        return yields.computeIfAbsent(job.name(), n -> reckoned(job));
    }

    private Yield reckoned(Job job) {
        double areaHa = job.field().field().areaHa();
        List<Yield.Option> options = job.options().stream()
                .map(o -> new Yield.Option(o.worth(), stocked.indexOf(o.mix()), areaHa))
                .toList();
        return new Yield(job.weightHa(), options);
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

    /** Hours before which seed may be told to wait, as minutes: those better than all before. */
    public int[] starts(Job job) {
        List<double[]> better = new ArrayList<>();
        double best = 0;
        for (int h = 0; h < problem.hours(); h++) {
            double worth = worth(job, h);
            boolean peak = h + 1 >= problem.hours() || worth(job, h + 1) <= worth * BETTER;
            if (peak && worth > best * BETTER) {
                if (best > 0) {
                    better.add(new double[] {h, worth});
                }
                best = worth;
            }
        }
        int skip = Math.max(0, better.size() - MOST_STARTS);
        int[] starts = new int[1 + better.size() - skip];
        for (int i = 1; i < starts.length; i++) {
            starts[i] = 60 * (int) better.get(i - 1 + skip)[0];
        }
        return starts;
    }

    private static double worth(Job job, int hour) {
        return job.options().stream()
                .mapToDouble(o -> hour < o.worth().length ? o.worth()[hour] : 0)
                .max()
                .orElse(0);
    }
}
