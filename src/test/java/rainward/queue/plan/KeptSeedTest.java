package rainward.queue.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.queue.plan.SmallFarm.hour;
import static rainward.queue.plan.SmallFarm.plot;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rainward.farm.CrewHours;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.StageRecord;
import rainward.queue.bound.UpperBound;
import rainward.queue.check.PlanChecker;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Effort;

/** Dust-dry ground: seed waits for rain, within the days planned or beyond them. */
class KeptSeedTest {

    private static final int RAIN_HOUR = 3 * 24 + 19;
    private static final Job.Kept HOPE = new Job.Kept(0.4, 0.38);

    private final SmallFarm farm = new SmallFarm();

    /** Seed in dust is worth little, the more the closer the rain; after it, the ground is wet. */
    private static double rainOnDayFour(int hour) {
        return hour < RAIN_HOUR ? 0.1 + 0.75 * Math.exp((hour - RAIN_HOUR) / 10.0) : 0.3;
    }

    private static SmallFarm.Plot dusty(String name, Job.Kept kept) {
        SmallFarm.Plot plot = plot(name, 3);
        plot.worth = KeptSeedTest::rainOnDayFour;
        plot.kept = kept;
        plot.recipe = new Recipe(
                "till and seed",
                List.of(
                        SmallFarm.stage("till", Operation.TILL, 0, -1),
                        SmallFarm.stage("seed", Operation.SEED, 0, 10 * 24)));
        return plot.stop(Operation.SEED, RAIN_HOUR, RAIN_HOUR + 30)
                .stop(Operation.TILL, RAIN_HOUR, RAIN_HOUR + 30);
    }

    private Plan planned() {
        Plan plan = Planner.plan(farm.problem(), Effort.tries(1, 5_000));
        assertThat(PlanChecker.faults(farm.problem(), plan)).isEmpty();
        return plan;
    }

    private static PlanItem item(Plan plan, String field, String stage) {
        return plan.items().stream()
                .filter(i ->
                        i.place().field().equals(field) && i.place().stage().equals(stage))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aFieldIsTilledAtOnceAndSeededRightAheadOfTheRain() {
        farm.with(dusty("F1", HOPE));
        Plan plan = planned();
        assertThat(hour(item(plan, "F1", "till").work().from())).isBetween(7.0, 8.0);
        assertThat(hour(item(plan, "F1", "seed").work().to()))
                .isBetween(3 * 24 + 16.0, 3 * 24 + 18.0);
    }

    /** Without rain on the days planned, 0.1 now stands against 0.4 later. */
    @Test
    void withoutRainItIsMadeReadyAndItsSeedIsKept() {
        SmallFarm.Plot plot = dusty("F1", HOPE);
        plot.worth = h -> 0.1;
        farm.with(plot);
        Plan plan = planned();
        assertThat(plan.seedingOf("F1")).isEmpty();
        assertThat(hour(item(plan, "F1", "till").work().from())).isBetween(7.0, 8.0);
        assertThat(plan.leftOut())
                .containsExactly(new Plan.LeftOut(
                        "F1",
                        "is made ready; its seed is kept for a better day: on the days planned it"
                                + " is worth at most 10% of a full stand, 38% can be hoped for"
                                + " later"));
        assertThat(plan.value().keptHa()).isCloseTo(3 * 0.4, within(1e-9));
        assertThat(plan.value().earnedHa()).isZero();
    }

    @Test
    void withNothingToHopeForLaterItIsSeededAllTheSame() {
        SmallFarm.Plot plot = dusty("F1", Job.Kept.NOTHING);
        plot.worth = h -> 0.1;
        farm.with(plot);
        assertThat(planned().seedingOf("F1")).isPresent();
    }

    @Test
    void seedOfAPinnedFieldIsNotKept() {
        SmallFarm.Plot plot = dusty("F1", HOPE);
        plot.worth = h -> 0.1;
        plot.status = new FieldStatus(
                FieldState.PENDING, List.of(), Optional.empty(), Optional.empty(), true);
        farm.with(plot);
        assertThat(planned().seedingOf("F1")).isPresent();
    }

    /** Tillage goes stale in a day: it is not done but in the last hours of the days planned. */
    @Test
    void whatWouldBeStaleByThenIsNotDoneAhead() {
        SmallFarm.Plot plot = dusty("F1", HOPE);
        plot.worth = h -> 0.1;
        plot.recipe = new Recipe(
                "till and seed",
                List.of(
                        SmallFarm.stage("till", Operation.TILL, 0, -1),
                        SmallFarm.stage("seed", Operation.SEED, 0, 24)));
        plot.stopped.clear();
        farm.with(plot);
        assertThat(hour(item(planned(), "F1", "till").work().to()))
                .isGreaterThanOrEqualTo(SmallFarm.HOURS - 24.0);
    }

    @Test
    void aFieldThatIsReadyJustWaits() {
        SmallFarm.Plot plot = dusty("F1", HOPE);
        plot.worth = h -> 0.1;
        Instant done = SmallFarm.MONDAY.minus(Duration.ofHours(9));
        plot.status = new FieldStatus(
                FieldState.IN_WORK,
                List.of(new StageRecord(
                        "till", Optional.empty(), Optional.of(done), Optional.empty())),
                Optional.empty(),
                Optional.empty(),
                false);
        farm.with(plot);
        Plan plan = planned();
        assertThat(plan.items()).isEmpty();
        assertThat(plan.leftOut().get(0).why()).startsWith("its seed is kept for a better day");
        assertThat(plan.value().totalHa()).isCloseTo(3 * 0.4, within(1e-9));
    }

    /** The seeder has time for one of two: the one that loses more by waiting gets it. */
    @Test
    void theFieldWithLessToHopeForLaterIsSeededFirst() {
        farm.hours = new CrewHours(
                LocalTime.of(13, 0),
                LocalTime.of(18, 0),
                Duration.ZERO,
                EnumSet.allOf(DayOfWeek.class),
                false);
        farm.with(dusty("F1", HOPE), dusty("F2", new Job.Kept(0.1, 0.1)));
        Plan plan = planned();
        double first = hour(plan.seedingOf("F2").orElseThrow().work().from());
        assertThat(first).isBetween(3 * 24.0, 4 * 24.0);
        assertThat(plan.seedingOf("F1")).isEmpty();
    }

    @Test
    void everyPlanKeepsAllRulesAndStaysBelowItsBound() {
        SplittableRandom random = new SplittableRandom(4);
        for (int day = 0; day < 20; day++) {
            SmallFarm some = new SmallFarm();
            some.with(IntStream.range(0, 6)
                    .mapToObj(f -> {
                        SmallFarm.Plot plot = dusty("F" + f, HOPE);
                        double ready = random.nextDouble(0.7);
                        plot.kept = new Job.Kept(ready, 0.95 * ready);
                        plot.areaHa = random.nextDouble(1, 6);
                        plot.kmNorth = random.nextInt(3) * 5;
                        return plot;
                    })
                    .toArray(SmallFarm.Plot[]::new));
            PlanProblem problem = some.problem();
            Plan plan = Planner.plan(problem, Effort.tries(day, 2_000));
            assertThat(PlanChecker.faults(problem, plan)).isEmpty();
            double total = plan.value().totalHa();
            assertThat(UpperBound.of(problem, total)).isGreaterThanOrEqualTo(total - 1e-6);
        }
    }

    @Test
    void theCheckerSeesHopeThatIsClaimedWithoutTheWork() {
        SmallFarm.Plot plot = dusty("F1", HOPE);
        plot.worth = h -> 0.1;
        farm.with(plot);
        Plan plan = planned();
        Plan unworked = new Plan(plan.asOf(), List.of(), plan.leftOut(), plan.value());
        assertThat(PlanChecker.faults(farm.problem(), unworked))
                .containsExactly("keeps 1.1400000000000001 ha for later, not 1.2000000000000002");
    }

    @Test
    void theCheckerSeesGroundThatIsMadeReadyTooSoon() {
        SmallFarm.Plot plot = dusty("F1", HOPE);
        plot.worth = h -> 0.1;
        farm.with(plot);
        Plan plan = planned();
        plot.recipe = new Recipe(
                "till and seed",
                List.of(
                        SmallFarm.stage("till", Operation.TILL, 0, -1),
                        SmallFarm.stage("seed", Operation.SEED, 0, 24)));
        PlanProblem stale = new SmallFarm().with(plot).problem();
        assertThat(PlanChecker.faults(stale, plan))
                .containsExactly("F1 is made ready so soon that it is stale before its seed");
    }
}
