package rainward.queue;

import java.util.List;
import rainward.queue.search.Placement;

/** Splits a large problem by geography into groups that are searched apart. */
final class Groups {

    private Groups() {}

    static List<PlanProblem> of(PlanProblem problem) {
        return List.of(problem);
    }

    /** A placement with machine and person as indices of the whole crew. */
    static Placement inWhole(Placement placement, PlanProblem group, PlanProblem whole) {
        return placement;
    }
}
