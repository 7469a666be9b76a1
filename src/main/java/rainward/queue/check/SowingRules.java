package rainward.queue.check;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rainward.farm.Operation;
import rainward.farm.Stage;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;

/** Seed goes in only in season, is in the shed, and the plan claims no more than it earns. */
final class SowingRules {

    private static final double TOLERANCE = 1e-6;

    private final PlanProblem problem;
    private final NamedJobs jobs;

    SowingRules(PlanProblem problem) {
        this.problem = problem;
        jobs = new NamedJobs(problem.jobs());
    }

    List<String> faults(Plan plan) {
        List<String> faults = new ArrayList<>();
        Map<String, Double> takenHa = new HashMap<>();
        double earnedHa = 0;
        for (PlanItem item : plan.items()) {
            boolean seeds = item.place().operation() == Operation.SEED;
            if (seeds != item.sowing().isPresent()) {
                faults.add(item.place() + ": what is sown is said where nothing is, or not at all");
            } else if (seeds) {
                Job job = jobs.of(item.place().field());
                faults.addAll(faults(job, item));
                double shareHa = job.field().field().areaHa() * item.shareFraction();
                takenHa.merge(item.sowing().get().mix(), shareHa, Double::sum);
                earnedHa += job.weightHa()
                        * item.shareFraction()
                        * item.sowing().get().worth();
            }
        }
        problem.stockHa().forEach((mix, ha) -> {
            if (takenHa.getOrDefault(mix, 0.0) > ha + TOLERANCE) {
                faults.add("more " + mix + " is sown than the shed holds");
            }
        });
        if (Math.abs(earnedHa - plan.value().earnedHa()) > TOLERANCE) {
            faults.add("earns " + earnedHa + " ha, not " + plan.value().earnedHa());
        }
        double keptHa = problem.jobs().stream()
                .filter(j -> jobs.of(j.name()).equals(j) && j.field().status().waiting())
                .filter(j -> plan.seedingOf(j.name()).isEmpty())
                .mapToDouble(j -> j.weightHa() * keptWorth(j, plan))
                .sum();
        if (Math.abs(keptHa - plan.value().keptHa()) > TOLERANCE) {
            faults.add("keeps " + keptHa + " ha for later, not " + plan.value().keptHa());
        }
        return faults;
    }

    /** Ready is a field on which nothing but seeding is left to do, by record or by plan. */
    private double keptWorth(Job job, Plan plan) {
        List<Stage> stages = job.recipe().stages();
        int seeding = stages.indexOf(job.recipe().seeding());
        Set<String> planned = plan.items().stream()
                .filter(i -> i.place().field().equals(job.name()))
                .map(i -> i.place().stage())
                .collect(Collectors.toSet());
        Optional<Stage> last =
                seeding == 0 ? Optional.empty() : Optional.of(stages.get(seeding - 1));
        Optional<StageRecord> record = last.flatMap(s -> job.field().status().of(s.name()));
        boolean stale = record.flatMap(StageRecord::finishedAt)
                .flatMap(at -> stages.get(seeding).greatestWait().map(at::plus))
                .filter(latest -> latest.isBefore(problem.horizon().to()))
                .isPresent();
        boolean ready = last.filter(s -> !planned.contains(s.name()) && (record.isEmpty() || stale))
                .isEmpty();
        return ready ? job.kept().readyWorth() : job.kept().rawWorth();
    }

    private List<String> faults(Job job, PlanItem item) {
        PlanItem.Sowing sowing = item.sowing().orElseThrow();
        Optional<Job.MixOption> mix =
                job.options().stream().filter(o -> o.mix().equals(sowing.mix())).findFirst();
        if (mix.isEmpty()) {
            return List.of(job.name() + " is not to be sown with " + sowing.mix());
        }
        double hours = 0;
        double worth = 0;
        double chance = 0;
        for (int h = 0; h < problem.hours(); h++) {
            Instant from = problem.horizon().from().plus(Duration.ofHours(h));
            double shared =
                    item.work().sharedHours(new Window(from, from.plus(Duration.ofHours(1))));
            if (shared > 0 && mix.get().worth()[h] <= 0) {
                return List.of(job.name() + " is sown out of season: " + item.work());
            }
            hours += shared;
            worth += shared > 0 ? shared * mix.get().worth()[h] : 0;
            chance += shared > 0 ? shared * mix.get().chance()[h] : 0;
        }
        boolean honest = Math.abs(worth / hours - sowing.worth()) < TOLERANCE
                && Math.abs(chance / hours - sowing.chance()) < TOLERANCE;
        return honest
                ? List.of()
                : List.of(job.name() + " claims what it does not earn: " + sowing);
    }
}
