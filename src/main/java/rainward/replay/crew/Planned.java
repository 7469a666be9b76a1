package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;

/**
 * The program's order, made anew every time it is asked; the crew keeps to it as well as it can.
 */
final class Planned implements Foreman {

    /** A crew that is early goes on with what is due within this time. */
    private static final Duration EARLY = Duration.ofMinutes(60);

    /** A gain below it is what is left to a seeding that waiting beats. */
    private static final double LEAST_GAIN = 0.025;

    private final Rounds rounds;
    private final Policy policy;
    private final long tries;
    private final GivenOrder given = new GivenOrder();
    private Optional<Plan> plan = Optional.empty();

    Planned(Rounds rounds, Policy policy, long tries) {
        this.rounds = rounds;
        this.policy = policy;
        this.tries = tries;
    }

    @Override
    public void consider(Instant now, List<FieldWork> fields) {
        Plan made = rounds.plan(policy, new Rounds.Asked(now, fields, plan), tries);
        plan = Optional.of(made);
        given.tell(
                made.items().stream().map(i -> i.place().field()).distinct().toList(),
                fields.stream()
                        .filter(FieldWork::open)
                        .map(f -> f.field().name())
                        .collect(Collectors.toSet()));
    }

    @Override
    public List<Wanted> wanted(Machine machine, GeoPoint at, Instant now, List<FieldWork> open) {
        return plan.stream()
                .flatMap(p -> p.items().stream())
                .filter(i -> i.hands().machine().equals(machine.name()))
                .filter(i -> !i.work().from().isAfter(now.plus(EARLY)))
                .filter(this::worthIt)
                .sorted(Comparator.comparing(i -> i.work().from()))
                .flatMap(i ->
                        open.stream().filter(work -> isFor(i, work)).map(work -> wanted(work, i)))
                .toList();
    }

    private static boolean isFor(PlanItem item, FieldWork work) {
        return item.place().field().equals(work.field().name())
                && item.place().stage().equals(work.nextStage().name());
    }

    /** A patient crew makes the field ready, and seeds it when that gains over waiting. */
    private boolean worthIt(PlanItem item) {
        return !policy.patient()
                || item.sowing().filter(s -> s.worth() < LEAST_GAIN).isEmpty();
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
