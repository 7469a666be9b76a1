package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
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

    /** A crew that is early goes on with what is due within this time. */
    private static final Duration EARLY = Duration.ofMinutes(60);

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
        order(rounds.problem(policy, new Rounds.Asked(now, fields, plan)), fields);
    }

    /** The order is made anew each hour in which a stage was begun, finished or broken off. */
    @Override
    public void goOn(Instant now, List<FieldWork> fields) {
        if (!cases(fields).equals(known)) {
            Rounds.Asked asked = new Rounds.Asked(now, fields, plan);
            problem.ifPresent(before -> order(rounds.since(before, asked), fields));
        }
    }

    private void order(PlanProblem asked, List<FieldWork> fields) {
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
                .filter(i -> !i.work().from().isAfter(now.plus(EARLY)))
                .sorted(Comparator.comparing(i -> i.work().from()))
                .flatMap(i ->
                        open.stream().filter(work -> isFor(i, work)).map(work -> wanted(work, i)))
                .toList();
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
