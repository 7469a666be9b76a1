package rainward.queue.plan;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rainward.queue.problem.Job;
import rainward.queue.problem.OpenStages;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;

/** What fields are expected to earn whose seed is kept for days after those planned. */
final class KeptSeed {

    private final PlanProblem problem;

    KeptSeed(PlanProblem problem) {
        this.problem = problem;
    }

    /** Sum of priority x area x worth over fields that wait for seed and get none in a plan. */
    double valueHa(List<PlanItem> items) {
        Set<String> sown = new HashSet<>();
        Map<String, Set<String>> stages = new HashMap<>();
        for (PlanItem item : items) {
            String field = item.place().field();
            stages.computeIfAbsent(field, f -> new HashSet<>()).add(item.place().stage());
            item.sowing().ifPresent(s -> sown.add(field));
        }
        Set<String> named = new HashSet<>();
        return problem.jobs().stream()
                .filter(j -> named.add(j.name()))
                .filter(j -> j.field().status().waiting() && !sown.contains(j.name()))
                .mapToDouble(j -> j.weightHa() * worth(j, stages.getOrDefault(j.name(), Set.of())))
                .sum();
    }

    /** Work before seeding is planned as a whole or not at all, but for a stage under way. */
    private double worth(Job job, Set<String> planned) {
        OpenStages open = OpenStages.of(job);
        long going = open.underWay().filter(r -> planned.contains(r.stage())).stream()
                .count();
        boolean ready = open.readyUntil(problem.horizon().to()) || planned.size() > going;
        return ready ? job.kept().readyWorth() : job.kept().rawWorth();
    }
}
