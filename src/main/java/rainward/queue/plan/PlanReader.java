package rainward.queue.plan;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Stage;
import rainward.queue.model.Habits;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.HourlyMean;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.shop.Placement;

/** Turns placements back into a plan that people can read. */
final class PlanReader {

    private final PlanProblem problem;
    private final HorizonMinutes minutes;
    private final Habits habits;
    private final KeptSeed kept;

    /**
     * Reads plans.
     *
     * @param problem with the fields that were planned
     * @param kept seed of all fields, planned or not
     */
    PlanReader(PlanProblem problem, KeptSeed kept) {
        this.problem = problem;
        this.kept = kept;
        minutes = HorizonMinutes.of(problem.horizon());
        habits = Habits.of(problem);
    }

    /** A placement with the job it belongs to and the days on which overtime is used. */
    record Placed(Job job, Placement placement, boolean[] overtime) {

        Stage stage() {
            return job.recipe().stages().get(placement.task().stage());
        }

        int overtimeMinutes() {
            return placement
                    .hand()
                    .open()
                    .overtimeMinutes(placement.start(), placement.finish(), overtime);
        }

        List<int[]> parts() {
            return placement.hand().open().parts(placement.start(), placement.finish(), overtime);
        }
    }

    /**
     * Puts items in order and reckons their value.
     *
     * @param placed all tasks of all groups
     * @param leftOut fields that are not among them
     * @return the plan
     */
    Plan plan(List<Placed> placed, List<Plan.LeftOut> leftOut) {
        Map<String, Integer> ranks = ranks(placed);
        List<PlanItem> items = new ArrayList<>();
        for (Placed p : placed) {
            addItems(p, ranks.getOrDefault(p.job().name(), 0), items);
        }
        items.sort(Comparator.comparing((PlanItem i) -> i.work().from())
                .thenComparing(i -> i.hands().machine())
                .thenComparing(i -> i.place().field()));
        return new Plan(problem.asOf(), items, leftOut, value(placed, items));
    }

    /** Fields by the start of their seeding, pinned ones first; those without seeding last. */
    private static Map<String, Integer> ranks(List<Placed> placed) {
        Map<String, Placed> seeding = new HashMap<>();
        for (Placed p : placed) {
            seeding.merge(p.job().name(), p, PlanReader::rather);
        }
        List<Placed> order = new ArrayList<>(seeding.values());
        order.sort(Comparator.comparing((Placed p) -> !p.job().field().status().pinnedFirst())
                .thenComparing(p -> p.placement().option() < 0)
                .thenComparing(p -> p.placement().start())
                .thenComparing(p -> p.job().name()));
        Map<String, Integer> ranks = new HashMap<>();
        order.forEach(p -> ranks.put(p.job().name(), ranks.size() + 1));
        return ranks;
    }

    private static Placed rather(Placed a, Placed b) {
        return a.placement().option() >= 0 ? a : b;
    }

    private void addItems(Placed placed, int rank, List<PlanItem> items) {
        Placement at = placed.placement();
        PlanItem.Place place = new PlanItem.Place(
                placed.job().name(),
                placed.job().field().field().property(),
                placed.stage().name(),
                placed.stage().operation());
        PlanItem.Hands hands = new PlanItem.Hands(
                problem.crew().machines().get(at.hand().machine()).name(),
                problem.crew().people().get(at.hand().person()).name());
        double drivingHours = at.drive() / 60.0;
        int setting = at.setting();
        for (int[] part : placed.parts()) {
            items.add(new PlanItem(
                    rank,
                    place,
                    hands,
                    minutes.window(part[0], part[1]),
                    drivingHours,
                    sowing(placed, part, setting),
                    (part[1] - part[0]) / (double) at.hand().minutes()));
            drivingHours = 0;
            setting = 0;
        }
    }

    private static Optional<PlanItem.Sowing> sowing(Placed placed, int[] part, int setting) {
        int option = placed.placement().option();
        if (option < 0) {
            return Optional.empty();
        }
        Job.MixOption mix = placed.job().options().get(option);
        return Optional.of(new PlanItem.Sowing(
                mix.mix(),
                HourlyMean.of(mix.chance(), part[0], part[1]),
                HourlyMean.of(mix.worth(), part[0], part[1]),
                Duration.ofMinutes(setting)));
    }

    private Plan.Value value(List<Placed> placed, List<PlanItem> items) {
        Map<String, Double> weights = new HashMap<>();
        placed.forEach(p -> weights.put(p.job().name(), p.job().weightHa()));
        double earned = 0;
        double drivingH = 0;
        for (PlanItem item : items) {
            double weight = weights.getOrDefault(item.place().field(), 0.0);
            earned += weight
                    * item.shareFraction()
                    * item.sowing().map(s -> s.worth()).orElse(0.0);
            drivingH += item.drivingHours();
        }
        PlanProblem.Prices prices = problem.prices();
        return new Plan.Value(
                earned,
                kept.valueHa(items),
                drivingH * prices.drivingHaPerHour(),
                overtimeHours(placed) * prices.overtimeHaPerHour(),
                changeHa(items));
    }

    private static double overtimeHours(List<Placed> placed) {
        return placed.stream().mapToInt(Placed::overtimeMinutes).sum() / 60.0;
    }

    private double changeHa(List<PlanItem> items) {
        double[] paid = {habits.allHa()};
        habits.walk(items, (key, was, kept) -> paid[0] -= kept ? was.priceHa() : 0);
        return paid[0];
    }
}
