package rainward.queue.reasons;

import java.time.Instant;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rainward.farm.Operation;
import rainward.queue.problem.HorizonMinutes;
import rainward.queue.problem.HourlyMean;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;

/** Justifies a plan: for each field why here and not later. */
public final class OrderReasons {

    private static final int DAY_MINUTES = 24 * 60;
    private static final double GOOD_SHARE = 0.9;

    private final PlanProblem problem;
    private final Plan plan;
    private final HorizonMinutes minutes;
    private final Bindings bindings;

    private OrderReasons(PlanProblem problem, Plan plan) {
        this.problem = problem;
        this.plan = plan;
        minutes = HorizonMinutes.of(problem.horizon());
        bindings = new Bindings(problem, plan);
    }

    /**
     * Justifies every field of a plan, in order of rank.
     *
     * @param problem the plan was made for
     * @param plan that is given out
     * @return a reason for each field that has an item
     */
    public static List<FieldReason> of(PlanProblem problem, Plan plan) {
        OrderReasons reasons = new OrderReasons(problem, plan);
        return problem.jobs().stream()
                .flatMap(j -> reasons.of(j).stream())
                .sorted(java.util.Comparator.comparingInt(FieldReason::rank))
                .toList();
    }

    /** Justifies one field; empty where it is not in the order. */
    public static Optional<FieldReason> of(PlanProblem problem, Plan plan, String field) {
        return problem.jobs().stream()
                .filter(j -> j.name().equals(field))
                .findFirst()
                .flatMap(j -> new OrderReasons(problem, plan).of(j));
    }

    private Optional<FieldReason> of(Job job) {
        List<PlanItem> items = plan.items().stream()
                .filter(i -> i.place().field().equals(job.name()))
                .toList();
        if (items.isEmpty()) {
            return Optional.empty();
        }
        List<ItemReason> why = items.stream().map(i -> bindings.of(job, i)).toList();
        Optional<PlanItem> seeding = plan.seedingOf(job.name());
        double loss = seeding.map(s -> lossIfADayLater(job, s)).orElse(0.0);
        Optional<Instant> until = seeding.flatMap(s -> goodUntil(job, s));
        Optional<String> before = seeding.flatMap(s -> bindings.last(
                        s, o -> o.hands().machine().equals(s.hands().machine())))
                .map(i -> i.place().field());
        return Optional.of(new FieldReason(
                job.name(),
                items.get(0).rank(),
                loss,
                until,
                before,
                why,
                seeding.isPresent() ? words(loss, until, why) : unsown(job)));
    }

    /** Worth at the planned minutes less that at the same minutes of the next day, x weight. */
    private double lossIfADayLater(Job job, PlanItem seeding) {
        int start = minutes.notAfter(seeding.work().from());
        int finish = minutes.notBefore(seeding.work().to());
        double planned = seeding.sowing().map(PlanItem.Sowing::worth).orElse(0.0);
        return job.weightHa() * (planned - best(job, start + DAY_MINUTES, finish + DAY_MINUTES));
    }

    /** Best worth of any mix over some minutes; nothing where the ground is stopped in them. */
    private static double best(Job job, int start, int finish) {
        BitSet stopped = job.stopped().getOrDefault(Operation.SEED, new BitSet());
        int blocked = stopped.nextSetBit(start / 60);
        if (blocked >= 0 && blocked * 60 < finish) {
            return 0;
        }
        return job.options().stream()
                .mapToDouble(o -> HourlyMean.of(o.worth(), start, finish))
                .max()
                .orElse(0);
    }

    private Optional<Instant> goodUntil(Job job, PlanItem seeding) {
        double planned = seeding.sowing().map(PlanItem.Sowing::worth).orElse(0.0);
        int hour = minutes.notAfter(seeding.work().from()) / 60 + 1;
        while (hour < problem.hours()
                && best(job, 60 * hour, 60 * hour + 60) >= GOOD_SHARE * planned) {
            hour++;
        }
        return hour < problem.hours() ? Optional.of(minutes.at(60 * hour)) : Optional.empty();
    }

    private String unsown(Job job) {
        return plan.leftOut().stream()
                .filter(l -> l.field().equals(job.name()))
                .map(Plan.LeftOut::why)
                .findFirst()
                .orElse("work that goes on is finished first");
    }

    private String words(double loss, Optional<Instant> until, List<ItemReason> why) {
        List<String> parts = new ArrayList<>();
        parts.add(
                loss > 0.005
                        ? String.format(
                                Locale.ENGLISH,
                                "a day later it would lose %.2f ha of full stand",
                                loss)
                        : "a day later it would lose nothing, but its turn is now");
        until.ifPresent(u -> parts.add("good until " + problem.told(u)));
        why.stream()
                .filter(r -> r.item().sowing().isPresent())
                .findFirst()
                .ifPresent(r -> parts.add("not sooner: " + r.words()));
        return String.join("; ", parts);
    }
}
