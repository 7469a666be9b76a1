package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.farm.FieldCase;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Effort;

/**
 * The program's order, made anew every time it is asked; the crew keeps to it as well as it can.
 */
final class Planned implements Foreman {

    /** A crew that is early sets out for what it should leave for within this time. */
    private static final Duration EARLY = Duration.ofMinutes(60);

    /** What has been done in an hour changes little of the order of that morning; chosen by us. */
    private static final long LESS_IN_BETWEEN = 10;

    /** Nobody waits for so small a gain; chosen by us. */
    private static final double AS_GOOD = 0.02;

    private final Rounds rounds;
    private final Policy policy;
    private final long tries;
    private final GivenOrder given = new GivenOrder();
    private Optional<PlanProblem> problem = Optional.empty();
    private Optional<Plan> plan = Optional.empty();
    private List<FieldCase> known = List.of();

    Planned(Rounds rounds, Policy policy, long tries) {
        this.rounds = rounds;
        this.policy = policy;
        this.tries = tries;
    }

    @Override
    public void consider(Instant now, List<FieldWork> fields) {
        order(rounds.problem(policy, new Rounds.Asked(now, fields, plan)), fields, tries);
    }

    /** The order is made anew each hour in which a stage was begun, finished or broken off. */
    @Override
    public void goOn(Instant now, List<FieldWork> fields) {
        if (!cases(fields).equals(known)) {
            Rounds.Asked asked = new Rounds.Asked(now, fields, plan);
            problem.ifPresent(
                    before -> order(rounds.since(before, asked), fields, tries / LESS_IN_BETWEEN));
        }
    }

    private void order(PlanProblem asked, List<FieldWork> fields, long tries) {
        problem = Optional.of(asked);
        known = cases(fields);
        Plan made = Planner.plan(asked, Effort.tries(1, tries));
        plan = Optional.of(made);
        given.tell(
                made.items().stream().map(i -> i.place().field()).distinct().toList(),
                fields.stream()
                        .filter(FieldWork::open)
                        .map(f -> f.field().name())
                        .collect(Collectors.toSet()));
    }

    private static List<FieldCase> cases(List<FieldWork> fields) {
        return fields.stream().map(FieldWork::asCase).toList();
    }

    @Override
    public List<Wanted> wanted(Machine machine, GeoPoint at, Instant now, List<FieldWork> open) {
        return plan.stream()
                .flatMap(p -> p.items().stream())
                .filter(i -> i.hands().machine().equals(machine.name()))
                .filter(i -> !i.setsOut().isAfter(now.plus(EARLY)) || asGoodNow(i, now))
                .sorted(Comparator.comparing(i -> i.work().from()))
                .flatMap(i ->
                        open.stream().filter(work -> isFor(i, work)).map(work -> wanted(work, i)))
                .toList();
    }

    /**
     * The order waits for hours in which rain or wet ground is likely; a crew that sees that it can
     * work goes on with the next of the day, but for seed that the order keeps for a better hour.
     */
    private boolean asGoodNow(PlanItem item, Instant now) {
        PlanProblem asked = problem.orElseThrow();
        ZoneId zone = asked.crew().zone();
        if (!LocalDate.ofInstant(item.work().from(), zone).equals(LocalDate.ofInstant(now, zone))) {
            return false;
        }
        int hour = (int) Duration.between(asked.horizon().from(), now).toHours();
        return item.sowing()
                .map(sowing -> worth(item, sowing, hour) >= sowing.worth() - AS_GOOD)
                .orElse(true);
    }

    private double worth(PlanItem item, PlanItem.Sowing sowing, int hour) {
        return problem.orElseThrow().jobs().stream()
                .filter(job -> job.name().equals(item.place().field()))
                .flatMap(job -> job.options().stream())
                .filter(option -> option.mix().equals(sowing.mix()))
                .mapToDouble(option -> option.worth()[hour])
                .findFirst()
                .orElse(0);
    }

    private static boolean isFor(PlanItem item, FieldWork work) {
        return item.place().field().equals(work.field().name())
                && item.place().stage().equals(work.nextStage().name());
    }

    private static Wanted wanted(FieldWork work, PlanItem item) {
        return new Wanted(
                work,
                item.sowing().map(PlanItem.Sowing::mix),
                item.sowing().map(PlanItem.Sowing::chance).orElse(Double.NaN));
    }

    @Override
    public int changes() {
        return given.changes();
    }
}
