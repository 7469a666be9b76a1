package rainward.queue.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import rainward.farm.Window;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.search.Effort;

/** A good plan, damaged in one way after another: each must be seen. */
class PlanCheckerTest {

    private static final PlanProblem PROBLEM = GeneratedDays.benchDay(1);
    private static final Plan GOOD = Planner.plan(PROBLEM, Effort.tries(1, 1_000));

    private static PlanItem seeding() {
        return GOOD.items().stream()
                .filter(i -> i.sowing().isPresent() && i.shareFraction() == 1)
                .max(Comparator.comparing(i -> i.work().from()))
                .orElseThrow();
    }

    private static List<String> damaged(PlanItem item, UnaryOperator<PlanItem> damage) {
        List<PlanItem> items = new ArrayList<>(GOOD.items());
        items.set(items.indexOf(item), damage.apply(item));
        return faults(items, GOOD.value());
    }

    private static List<String> faults(List<PlanItem> items, Plan.Value value) {
        return PlanChecker.faults(PROBLEM, new Plan(GOOD.asOf(), items, GOOD.leftOut(), value));
    }

    private static PlanItem at(PlanItem i, Window work) {
        return new PlanItem(
                i.rank(),
                i.place(),
                i.hands(),
                work,
                i.drivingHours(),
                i.sowing(),
                i.shareFraction());
    }

    private static PlanItem moved(PlanItem item, Duration by) {
        return at(item, new Window(item.work().from().plus(by), item.work().to().plus(by)));
    }

    private static PlanItem by(PlanItem i, PlanItem.Hands hands) {
        return new PlanItem(
                i.rank(),
                i.place(),
                hands,
                i.work(),
                i.drivingHours(),
                i.sowing(),
                i.shareFraction());
    }

    @Test
    void aGoodPlanHasNoFault() {
        assertThat(PlanChecker.faults(PROBLEM, GOOD)).isEmpty();
    }

    @Test
    void workAtMidnightIsOutsideTheShiftAndInTheDark() {
        Duration toMidnight = Duration.ofHours(10);
        assertThat(damaged(seeding(), i -> moved(i, toMidnight)))
                .anyMatch(f -> f.contains("outside the shift"))
                .anyMatch(f -> f.contains("in the dark"));
    }

    @Test
    void seedAheadOfTillageIsTooSoon() {
        assertThat(damaged(seeding(), i -> moved(i, Duration.ofDays(-7)))).isNotEmpty();
        PlanItem seed = GOOD.items().stream()
                .filter(i -> i.sowing().isPresent())
                .filter(i -> GOOD.items().stream()
                        .anyMatch(t -> t.place().stage().equals("till")
                                && t.place().field().equals(i.place().field())))
                .findFirst()
                .orElseThrow();
        PlanItem till = GOOD.items().stream()
                .filter(i -> i.place().stage().equals("till"))
                .filter(i -> i.place().field().equals(seed.place().field()))
                .findFirst()
                .orElseThrow();
        Window early = new Window(
                till.work().from().minus(seed.work().length()), till.work().from());
        assertThat(damaged(seed, i -> at(i, early))).anyMatch(f -> f.contains("too soon"));
    }

    @Test
    void twoFieldsAtOnceAreSeen() {
        PlanItem item = seeding();
        PlanItem other = GOOD.items().stream()
                .filter(i -> i.hands().machine().equals(item.hands().machine()))
                .filter(i -> !i.equals(item))
                .findFirst()
                .orElseThrow();
        Window same = new Window(
                other.work().from(), other.work().from().plus(item.work().length()));
        assertThat(damaged(item, i -> at(i, same))).anyMatch(f -> f.contains("in two places"));
    }

    @Test
    void aMachineThatCannotDoItIsSeen() {
        assertThat(damaged(
                        seeding(),
                        i -> by(i, new PlanItem.Hands("spreader", i.hands().person()))))
                .anyMatch(f -> f.contains("cannot SEED"));
    }

    @Test
    void workThatIsTooShortIsSeen() {
        assertThat(damaged(
                        seeding(),
                        i -> at(i, new Window(i.work().from(), i.work().to().minusSeconds(600)))))
                .anyMatch(f -> f.contains("needs"));
    }

    @Test
    void aMissingStageIsSeen() {
        List<PlanItem> items = new ArrayList<>(GOOD.items());
        PlanItem till = items.stream()
                .filter(i -> i.place().stage().equals("till"))
                .findFirst()
                .orElseThrow();
        items.removeIf(i -> i.place().equals(till.place()));
        assertThat(faults(items, GOOD.value())).anyMatch(f -> f.contains("lacks its stage till"));
    }

    @Test
    void aForgottenFieldIsSeen() {
        List<PlanItem> items = new ArrayList<>(GOOD.items());
        String field = seeding().place().field();
        items.removeIf(i -> i.place().field().equals(field));
        assertThat(faults(items, GOOD.value()))
                .anyMatch(f -> f.contains(field + " is neither in the order nor left out"));
    }

    @Test
    void aDriveThatIsLeftOutIsSeen() {
        PlanItem drives = GOOD.items().stream()
                .filter(i -> i.drivingHours() > 0)
                .findFirst()
                .orElseThrow();
        UnaryOperator<PlanItem> parked = i -> new PlanItem(
                i.rank(), i.place(), i.hands(), i.work(), 0, i.sowing(), i.shareFraction());
        assertThat(damaged(drives, parked)).anyMatch(f -> f.contains("on the road"));
    }

    @Test
    void aChanceThatIsNotEarnedIsSeen() {
        UnaryOperator<PlanItem> boast = i -> new PlanItem(
                i.rank(),
                i.place(),
                i.hands(),
                i.work(),
                i.drivingHours(),
                Optional.of(new PlanItem.Sowing(i.sowing().get().mix(), 0.99, 0.99)),
                i.shareFraction());
        assertThat(damaged(seeding(), boast)).anyMatch(f -> f.contains("does not earn"));
        Plan.Value more = new Plan.Value(GOOD.value().earnedHa() + 1, 0, 0, 0, 0);
        assertThat(faults(GOOD.items(), more)).anyMatch(f -> f.contains("earns"));
    }

    @Test
    void stoppedGroundIsSeen() {
        PlanItem item = seeding();
        int hour = (int)
                Duration.between(PROBLEM.horizon().from(), item.work().from()).toHours();
        PROBLEM.jobs().stream()
                .filter(j -> j.name().equals(item.place().field()))
                .forEach(j -> stopped(j, item).set(hour));
        try {
            assertThat(PlanChecker.faults(PROBLEM, GOOD)).anyMatch(f -> f.contains("stops it"));
        } finally {
            PROBLEM.jobs().forEach(j -> stopped(j, item).clear(hour));
        }
    }

    private static BitSet stopped(Job job, PlanItem item) {
        return Optional.ofNullable(job.stopped().get(item.place().operation())).orElseThrow();
    }
}
