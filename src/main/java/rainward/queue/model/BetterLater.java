package rainward.queue.model;

import java.util.BitSet;
import java.util.Locale;
import java.util.Optional;
import rainward.farm.Operation;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;

/** Says of a field that its seed is worth more later than on any of the days planned. */
public final class BetterLater {

    private static final String KEPT = "its seed is kept for a better day";

    private BetterLater() {}

    /** True of a reason why a field is not seeded that says so. */
    public static boolean saidIn(String why) {
        return why.contains(KEPT);
    }

    /** Both figures in words; empty where the days planned have an hour that is better. */
    public static Optional<String> words(Job job, PlanProblem problem) {
        double best = best(job, problem.hours());
        double later = new Yields(problem).keptWorth(job);
        return best > later || later == 0
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ENGLISH,
                        KEPT + ": on the days planned it is worth at"
                                + " most %.0f%% of a full stand, %.0f%% can be hoped for later",
                        100 * best,
                        100 * later));
    }

    private static double best(Job job, int hours) {
        BitSet stopped = job.stopped().getOrDefault(Operation.SEED, new BitSet());
        double best = 0;
        for (Job.MixOption option : job.options()) {
            for (int h = stopped.nextClearBit(0);
                    h < Math.min(hours, option.worth().length);
                    h = stopped.nextClearBit(h + 1)) {
                best = Math.max(best, option.worth()[h]);
            }
        }
        return best;
    }
}
