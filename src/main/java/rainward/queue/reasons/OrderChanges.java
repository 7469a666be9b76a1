package rainward.queue.reasons;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rainward.queue.model.Habits;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;

/**
 * What is different from the last order, and what that gains.
 *
 * @param changes by field
 * @param gainHa value of the new order less that of the last one kept as well as it still can be,
 *     the price of change left out [ha of full stand]
 */
public record OrderChanges(List<OrderChange> changes, double gainHa) {

    public OrderChanges {
        changes = List.copyOf(changes);
    }

    /**
     * Compares a plan with the order given out before.
     *
     * @param problem with the last order
     * @param plan made for it
     * @return nothing where there was no last order
     */
    public static OrderChanges of(PlanProblem problem, Plan plan) {
        if (problem.lastOrder().isEmpty()) {
            return new OrderChanges(List.of(), 0);
        }
        Plan last = problem.lastOrder().get();
        Plan kept = Planner.keep(problem);
        Map<String, Double> earned = earned(problem, plan);
        Map<String, Double> before = earned(problem, kept);
        List<OrderChange> changes = new ArrayList<>();
        Set<String> moved = moved(problem, plan);
        for (Job job : problem.jobs()) {
            boolean was = stands(last, job.name());
            boolean is = stands(plan, job.name());
            double gain =
                    earned.getOrDefault(job.name(), 0.0) - before.getOrDefault(job.name(), 0.0);
            if (was && !is) {
                changes.add(new OrderChange(
                        job.name(), OrderChange.Kind.GONE, gain, whyGone(plan, job.name())));
            } else if (is && !was) {
                changes.add(new OrderChange(
                        job.name(), OrderChange.Kind.NEW, gain, when(problem, plan, job)));
            } else if (moved.contains(job.name())) {
                changes.add(new OrderChange(
                        job.name(),
                        OrderChange.Kind.MOVED,
                        gain,
                        "was " + when(problem, last, job) + ", now " + when(problem, plan, job)));
            }
        }
        double gain = withoutChange(plan) - withoutChange(kept);
        return new OrderChanges(changes, gain);
    }

    private static double withoutChange(Plan plan) {
        return plan.value().totalHa() + plan.value().changeHa();
    }

    private static boolean stands(Plan plan, String field) {
        return plan.items().stream().anyMatch(i -> i.place().field().equals(field));
    }

    private static String whyGone(Plan plan, String field) {
        return plan.whyLeftOut(field).orElse("is no longer in the queue");
    }

    private static String when(PlanProblem problem, Plan plan, Job job) {
        Optional<PlanItem> seeding = plan.seedingOf(job.name());
        Optional<Instant> start = seeding.or(() -> plan.items().stream()
                        .filter(i -> i.place().field().equals(job.name()))
                        .findFirst())
                .map(i -> i.work().from());
        return start.map(problem::told).orElse("nowhere");
    }

    private static Map<String, Double> earned(PlanProblem problem, Plan plan) {
        Map<String, Double> weights = new HashMap<>();
        problem.jobs().forEach(j -> weights.putIfAbsent(j.name(), j.weightHa()));
        Map<String, Double> earned = new HashMap<>();
        for (PlanItem item : plan.items()) {
            double worth = item.sowing().map(PlanItem.Sowing::worth).orElse(0.0);
            double ha = weights.getOrDefault(item.place().field(), 0.0) * item.shareFraction();
            earned.merge(item.place().field(), ha * worth, Double::sum);
        }
        return earned;
    }

    /** Fields with an item that the crew would say has moved. */
    private static Set<String> moved(PlanProblem problem, Plan plan) {
        Habits habits = Habits.of(problem);
        Set<String> moved = new HashSet<>();
        habits.walk(plan.items(), (key, was, kept) -> {
            if (!kept) {
                moved.add(key.field());
            }
        });
        return moved;
    }
}
