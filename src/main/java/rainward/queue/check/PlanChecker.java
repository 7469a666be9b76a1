package rainward.queue.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;

/** Names every rule that a plan breaks. */
public final class PlanChecker {

    private PlanChecker() {}

    /**
     * Checks a plan against the problem it was made for.
     *
     * @param problem fields, crew, hours
     * @param plan to be given out
     * @return what is wrong, in words; empty where nothing is
     */
    public static List<String> faults(PlanProblem problem, Plan plan) {
        List<String> faults = new ArrayList<>(everyFieldOnce(problem, plan));
        faults.addAll(known(problem, plan));
        if (!faults.isEmpty()) {
            return faults;
        }
        faults.addAll(twice(plan, "machine", i -> i.hands().machine()));
        faults.addAll(twice(plan, "person", i -> i.hands().person()));
        faults.addAll(twice(plan, "field", i -> i.place().field()));
        faults.addAll(pinnedFirst(problem, plan));
        HoursRules hours = new HoursRules(problem);
        plan.items().forEach(i -> faults.addAll(hours.faults(i)));
        StageRules stages = new StageRules(problem);
        byField(plan).forEach((field, items) -> faults.addAll(stages.faults(field, items)));
        faults.addAll(new RoadRules(problem, hours).faults(plan));
        faults.addAll(new SowingRules(problem).faults(plan));
        return faults;
    }

    static Map<String, List<PlanItem>> byField(Plan plan) {
        return plan.items().stream()
                .sorted(Comparator.comparing(i -> i.work().from()))
                .collect(Collectors.groupingBy(i -> i.place().field()));
    }

    private static List<String> everyFieldOnce(PlanProblem problem, Plan plan) {
        List<String> faults = new ArrayList<>();
        Set<String> planned = byField(plan).keySet();
        Set<String> left =
                plan.leftOut().stream().map(Plan.LeftOut::field).collect(Collectors.toSet());
        for (Job job : problem.jobs()) {
            if (!planned.contains(job.name()) && !left.contains(job.name())) {
                faults.add(job.name() + " is neither in the order nor left out");
            }
        }
        return faults;
    }

    private static List<String> known(PlanProblem problem, Plan plan) {
        List<String> faults = new ArrayList<>();
        NamedJobs jobs = new NamedJobs(problem.jobs());
        for (PlanItem item : plan.items()) {
            PlanItem.Place place = item.place();
            boolean stage =
                    jobs.find(place.field()).filter(job -> asks(job, place)).isPresent();
            if (!stage) {
                faults.add(place.field() + " " + place.stage() + ": no such stage is asked for");
            }
            if (!able(problem, item)) {
                faults.add(item.hands() + " cannot " + place.operation());
            }
        }
        return faults;
    }

    private static boolean asks(Job job, PlanItem.Place place) {
        return job.recipe().stages().stream()
                .anyMatch(
                        s -> s.name().equals(place.stage()) && s.operation() == place.operation());
    }

    private static boolean able(PlanProblem problem, PlanItem item) {
        boolean machine = problem.crew().machines().stream()
                .anyMatch(m -> m.name().equals(item.hands().machine())
                        && m.operations().contains(item.place().operation()));
        boolean person = problem.crew().people().stream()
                .anyMatch(p -> p.name().equals(item.hands().person())
                        && p.canRun(item.hands().machine()));
        return machine && person;
    }

    private static List<String> twice(Plan plan, String what, Function<PlanItem, String> key) {
        List<String> faults = new ArrayList<>();
        Map<String, List<PlanItem>> all = plan.items().stream()
                .sorted(Comparator.comparing(i -> i.work().from()))
                .collect(Collectors.groupingBy(key));
        all.forEach((name, items) -> {
            for (int i = 1; i < items.size(); i++) {
                if (items.get(i).work().overlaps(items.get(i - 1).work())) {
                    faults.add(what + " " + name + " is in two places: " + items.get(i));
                }
            }
        });
        return faults;
    }

    private static List<String> pinnedFirst(PlanProblem problem, Plan plan) {
        Set<String> pinned = new HashSet<>();
        for (Job job : problem.jobs()) {
            if (job.field().status().pinnedFirst()) {
                pinned.add(job.name());
            }
        }
        int last = plan.items().stream()
                .filter(i -> pinned.contains(i.place().field()))
                .mapToInt(PlanItem::rank)
                .max()
                .orElse(0);
        return plan.items().stream()
                .filter(i -> !pinned.contains(i.place().field()) && i.rank() <= last)
                .map(i -> i.place().field() + " stands before a pinned field")
                .distinct()
                .toList();
    }
}
