package rainward.queue.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.queue.plan.SmallFarm.MONDAY;
import static rainward.queue.plan.SmallFarm.hour;
import static rainward.queue.plan.SmallFarm.plot;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.CrewHours;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.check.PlanChecker;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.search.Effort;

class PlannerTest {

    private static Plan plan(SmallFarm farm) {
        Plan plan = Planner.plan(farm.problem(), Effort.tries(1, 2_000));
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

    private static FieldStatus status(FieldState state, StageRecord... stages) {
        return new FieldStatus(state, List.of(stages), Optional.empty(), Optional.empty(), false);
    }

    private static StageRecord done(String stage, Instant at) {
        return new StageRecord(stage, Optional.empty(), Optional.of(at), Optional.empty());
    }

    private static String whyLeftOut(Plan plan, String field) {
        return plan.leftOut().stream()
                .filter(l -> l.field().equals(field))
                .map(Plan.LeftOut::why)
                .findFirst()
                .orElse("is in the order");
    }

    @Nested
    class WorkedCases {

        @Test
        void aFieldIsTilledAfterTheDriveAndSeededAfterwards() {
            Plan plan = plan(new SmallFarm().with(plot("F1", 2)));
            // 5 km x 1.3 at 30 km/h is 13 min, 10 min to hitch: tilling starts at 07:23.
            assertThat(hour(item(plan, "F1", "till").work().from()))
                    .isCloseTo(7 + 23 / 60.0, within(1e-9));
            assertThat(item(plan, "F1", "seed").work().from())
                    .isEqualTo(item(plan, "F1", "till").work().to());
            assertThat(plan.value().earnedHa()).isBetween(1.9, 2.0);
        }

        @Test
        void workThatDoesNotFitIntoTheDayWaitsForTheNextWithTheMachineThereAlready() {
            SmallFarm farm = new SmallFarm().with(plot("F1", 3.5));
            farm.asOf = MONDAY.plus(Duration.ofHours(15));
            Plan plan = plan(farm);
            assertThat(hour(item(plan, "F1", "till").work().from())).isEqualTo(24 + 7);
        }

        @Test
        void longWorkRestsOverNightAndIsSeveralItems() {
            Plan plan = plan(new SmallFarm().with(plot("F1", 14)));
            List<PlanItem> till = plan.items().stream()
                    .filter(i -> i.place().stage().equals("till"))
                    .toList();
            assertThat(till).hasSize(2);
            assertThat(hour(till.get(0).work().to())).isEqualTo(18);
            assertThat(hour(till.get(1).work().from())).isEqualTo(24 + 7);
            assertThat(till.get(0).shareFraction() + till.get(1).shareFraction())
                    .isCloseTo(1, within(1e-9));
        }

        @Test
        void seedWaitsForAnHourThatIsMuchBetter() {
            SmallFarm.Plot plot = plot("F1", 2);
            plot.worth = h -> h >= 56 && h < 62 ? 0.9 : 0.2;
            Plan plan = plan(new SmallFarm().with(plot));
            assertThat(hour(item(plan, "F1", "seed").work().from())).isBetween(56.0, 60.0);
        }

        @Test
        void tillageIsDelayedWhereSeedingWouldComeTooLateForIt() {
            SmallFarm.Plot plot = plot("F1", 2).stop(Operation.SEED, 0, 80);
            Plan plan = plan(new SmallFarm().with(plot));
            Duration wait = Duration.between(
                    item(plan, "F1", "till").work().to(),
                    item(plan, "F1", "seed").work().from());
            assertThat(wait).isLessThanOrEqualTo(Duration.ofHours(48));
            assertThat(hour(item(plan, "F1", "seed").work().from())).isGreaterThanOrEqualTo(80);
        }

        @Test
        void tillageThatHasGoneStaleIsDoneAgain() {
            SmallFarm.Plot plot = plot("F1", 2);
            plot.status =
                    status(FieldState.IN_WORK, done("till", MONDAY.minus(Duration.ofHours(44))));
            Plan plan = plan(new SmallFarm().with(plot));
            assertThat(plan.items()).extracting(i -> i.place().stage()).contains("till", "seed");
            plot.status =
                    status(FieldState.IN_WORK, done("till", MONDAY.minus(Duration.ofHours(30))));
            Plan fresh = plan(new SmallFarm().with(plot));
            assertThat(fresh.items()).extracting(i -> i.place().stage()).containsExactly("seed");
        }

        @Test
        void rainThatFirmsSparesTheRoller() {
            Stage roll = new Stage(
                    "roll",
                    Operation.FIRM,
                    Duration.ZERO,
                    Optional.of(Duration.ofHours(24)),
                    new StageLimits(
                            true,
                            StageLimits.SOIL_ONLY.greatestWindMps(),
                            StageLimits.SOIL_ONLY.leastWindMps(),
                            Duration.ZERO,
                            Optional.empty(),
                            true));
            Recipe recipe = new Recipe(
                    "roll", List.of(SmallFarm.stage("seed", Operation.SEED, 0, -1), roll));
            SmallFarm farm = new SmallFarm();
            farm.machines.add(SmallFarm.ROLLER);
            SmallFarm.Plot plot = plot("F1", 2);
            plot.recipe = recipe;
            assertThat(plan(farm.with(plot)).items()).hasSize(2);
            farm.jobs.clear();
            plot.firmed.set(0, 24);
            assertThat(plan(farm.with(plot)).items()).hasSize(1);
        }

        @Test
        void aMixWithTooLittleSeedIsNotSown() {
            SmallFarm farm = new SmallFarm().with(plot("F1", 2), plot("F2", 3));
            farm.stockHa = Map.of("brassica", 3.5);
            Plan plan = plan(farm);
            assertThat(plan.seedingOf("F2")).isPresent();
            assertThat(plan.seedingOf("F1")).isEmpty();
        }

        @Test
        void overtimeIsWorkedOnlyWhereItPays() {
            SmallFarm farm = new SmallFarm().with(plot("F1", 2));
            farm.asOf = MONDAY.plus(Duration.ofHours(15));
            farm.hours = new CrewHours(
                    farm.hours.start(),
                    farm.hours.end(),
                    Duration.ofHours(2),
                    farm.hours.days(),
                    false);
            assertThat(hour(item(plan(farm), "F1", "seed").work().to())).isGreaterThan(18);
            farm.prices = new PlanProblem.Prices(0, 1, 0);
            assertThat(hour(item(plan(farm), "F1", "seed").work().from())).isGreaterThan(24);
        }

        @Test
        void onePersonForTwoMachinesChangesOverByCar() {
            SmallFarm farm = new SmallFarm().with(plot("F1", 2));
            farm.people.remove(1);
            Plan plan = plan(farm);
            Duration between = Duration.between(
                    item(plan, "F1", "till").work().to(),
                    item(plan, "F1", "seed").work().from());
            // 7 min by car back to the seeder, 23 min with it.
            assertThat(between.toMinutes()).isEqualTo(7 + 23);
        }

        @Test
        void whoIsAwayDoesNotWork() {
            SmallFarm farm = new SmallFarm().with(plot("F1", 2));
            Window monday = new Window(MONDAY, MONDAY.plus(Duration.ofHours(24)));
            farm.people.clear();
            farm.people.add(new Person("Ann", Set.of("tiller"), List.of(monday)));
            farm.people.add(SmallFarm.person("Bo", "seeder"));
            assertThat(hour(item(plan(farm), "F1", "till").work().from())).isGreaterThan(24);
        }
    }

    @Nested
    class WhatThePersonSays {

        static final FieldStatus PINNED = new FieldStatus(
                FieldState.PENDING, List.of(), Optional.empty(), Optional.empty(), true);

        @Test
        void aPinnedFieldComesFirst() {
            SmallFarm.Plot small = plot("F9", 0.3);
            small.priority = 0.1;
            small.status = PINNED;
            Plan plan = plan(new SmallFarm().with(plot("F1", 3), plot("F2", 3), small));
            assertThat(item(plan, "F9", "seed").rank()).isEqualTo(1);
            assertThat(item(plan, "F9", "till").work().from())
                    .isBefore(item(plan, "F1", "till").work().from());
        }

        @Test
        void aPinnedFieldStaysThoughItCostsMoreThanItEarns() {
            SmallFarm.Plot far = plot("F9", 0.2);
            far.kmNorth = 60;
            far.status = PINNED;
            SmallFarm farm = new SmallFarm().with(plot("F1", 3), plot("F2", 3), far);
            farm.prices = new PlanProblem.Prices(0.2, 0, 0);
            assertThat(item(plan(farm), "F9", "seed").rank()).isEqualTo(1);
            far.status = FieldStatus.UNTOUCHED;
            SmallFarm free = new SmallFarm().with(plot("F1", 3), plot("F2", 3), far);
            free.prices = farm.prices;
            assertThat(whyLeftOut(plan(free), "F9")).contains("costs more").contains("pin it");
        }

        @Test
        void aPinnedFieldThatNeedsOvertimeGetsIt() {
            SmallFarm.Plot last = plot("F9", 2);
            last.worth = h -> h < 24 ? 0.3 : 0;
            last.stop(Operation.TILL, 0, 16);
            last.status = PINNED;
            SmallFarm farm = new SmallFarm().with(plot("F1", 2), last);
            farm.hours = new CrewHours(
                    LocalTime.of(7, 0),
                    LocalTime.of(18, 0),
                    Duration.ofHours(3),
                    EnumSet.allOf(DayOfWeek.class),
                    false);
            farm.prices = new PlanProblem.Prices(0, 1, 0);
            assertThat(item(plan(farm), "F9", "seed").rank()).isEqualTo(1);
        }

        @Test
        void everyPinnedFieldOfTheBenchDaysStandsFirst() {
            for (int day = 0; day < 8; day++) {
                PlanProblem problem = GeneratedDays.benchDay(day);
                Set<String> pins = Set.of("F03", "F17", "F30");
                String edits =
                        String.join("; ", pins.stream().map(p -> "pin " + p).toList());
                PlanProblem pinned =
                        rainward.queue.reasons.WhatIf.of(problem, edits).problem();
                Plan plan = Planner.plan(pinned, Effort.tries(1, 2_000));
                assertThat(plan.items().stream()
                                .filter(i -> i.rank() <= pins.size())
                                .map(i -> i.place().field())
                                .collect(java.util.stream.Collectors.toSet()))
                        .as("day %s", day)
                        .isEqualTo(pins);
            }
        }

        @Test
        void aHeldFieldWaits() {
            SmallFarm.Plot plot = plot("F1", 2);
            plot.status = new FieldStatus(
                    FieldState.PENDING,
                    List.of(),
                    Optional.empty(),
                    Optional.of(MONDAY.plus(Duration.ofHours(34))),
                    false);
            Plan plan = plan(new SmallFarm().with(plot));
            assertThat(hour(item(plan, "F1", "till").work().from())).isEqualTo(34);
        }

        @Test
        void aDroppedFieldIsLeftOut() {
            SmallFarm.Plot plot = plot("F1", 2);
            plot.status = status(FieldState.DROPPED);
            assertThat(whyLeftOut(plan(new SmallFarm().with(plot)), "F1")).contains("dropped");
        }

        @Test
        void workUnderWayIsFinishedFirstOnItsMachine() {
            SmallFarm farm = new SmallFarm();
            farm.asOf = MONDAY.plus(Duration.ofHours(9));
            SmallFarm.Plot going = plot("F5", 3);
            going.priority = 0.1;
            going.status = status(
                    FieldState.IN_WORK,
                    new StageRecord(
                            "till",
                            Optional.of(MONDAY.plus(Duration.ofHours(8))),
                            Optional.empty(),
                            Optional.of("tiller")));
            Plan plan = plan(farm.with(plot("F1", 2), going));
            Window work = item(plan, "F5", "till").work();
            assertThat(hour(work.from())).isEqualTo(9);
            assertThat(work.length()).isEqualTo(Duration.ofHours(2));
        }
    }

    @Nested
    class BadInput {

        @Test
        void eachIsNamedAndTheRestIsPlanned() {
            SmallFarm farm = new SmallFarm();
            SmallFarm.Plot far = plot("FAR", 2);
            far.kmNorth = -9_000;
            SmallFarm.Plot roll = plot("ROLL", 2);
            roll.recipe = new Recipe(
                    "roll",
                    List.of(
                            SmallFarm.stage("roll", Operation.FIRM, 0, -1),
                            SmallFarm.stage("seed", Operation.SEED, 0, -1)));
            SmallFarm.Plot waits = plot("WAITS", 2);
            waits.recipe = new Recipe(
                    "long wait",
                    List.of(
                            SmallFarm.stage("till", Operation.TILL, 0, -1),
                            SmallFarm.stage("seed", Operation.SEED, 400, -1)));
            SmallFarm.Plot late = plot("LATE", 2);
            late.worth = h -> 0;
            SmallFarm.Plot wet = plot("WET", 2).stop(Operation.SEED, 0, SmallFarm.HOURS);
            Plan plan = plan(farm.with(plot("F1", 2), far, roll, waits, late, wet));
            assertThat(plan.seedingOf("F1")).isPresent();
            assertThat(whyLeftOut(plan, "FAR")).contains("too far");
            assertThat(whyLeftOut(plan, "ROLL")).contains("no machine can firm");
            assertThat(whyLeftOut(plan, "WAITS")).contains("do not fit");
            assertThat(whyLeftOut(plan, "LATE")).contains("no mix has a chance");
            assertThat(whyLeftOut(plan, "WET")).contains("ground or wind stops seed");
        }

        @Test
        void nobodyToDriveIsNamed() {
            SmallFarm farm = new SmallFarm().with(plot("F1", 2));
            farm.people.clear();
            farm.people.add(SmallFarm.person("Ann", "tiller"));
            assertThat(whyLeftOut(plan(farm), "F1")).contains("nobody can run seeder");
            farm.people.clear();
            assertThat(whyLeftOut(plan(farm), "F1")).contains("nobody can run");
        }

        @Test
        void daysWithoutWorkingHoursAreNamed() {
            SmallFarm farm = new SmallFarm().with(plot("F1", 2), plot("F2", 2));
            farm.hours = new CrewHours(
                    LocalTime.of(7, 0),
                    LocalTime.of(18, 0),
                    Duration.ZERO,
                    EnumSet.of(DayOfWeek.SUNDAY),
                    false);
            Plan plan = plan(farm);
            assertThat(plan.items()).isEmpty();
            assertThat(whyLeftOut(plan, "F1")).contains("nobody works on any of the days planned");
            assertThat(whyLeftOut(plan, "F2")).contains("nobody works on any of the days planned");
        }

        @Test
        void aShiftTooShortForTheWorkIsNamed() {
            SmallFarm farm = new SmallFarm().with(plot("F1", 2));
            farm.hours = new CrewHours(
                    LocalTime.of(7, 0),
                    LocalTime.of(7, 1),
                    Duration.ZERO,
                    EnumSet.allOf(DayOfWeek.class),
                    false);
            assertThat(whyLeftOut(plan(farm), "F1")).contains("longer than a shift");
        }

        @Test
        void noFieldGivesAnEmptyPlan() {
            assertThat(plan(new SmallFarm()).items()).isEmpty();
        }

        @Test
        void aFieldNamedTwiceIsPlannedOnce() {
            Plan plan = plan(new SmallFarm().with(plot("F1", 2), plot("F1", 3)));
            assertThat(whyLeftOut(plan, "F1")).contains("named twice");
            assertThat(plan.items()).hasSize(2);
        }
    }

    @Nested
    class Laws {

        @Test
        void everyPlanOfTheBenchDaysKeepsAllRules() {
            for (int day = 0; day < GeneratedDays.BENCH_DAYS; day++) {
                PlanProblem problem = GeneratedDays.benchDay(day);
                Plan plan = Planner.plan(problem, Effort.tries(1, 2_000));
                assertThat(PlanChecker.faults(problem, plan)).as("day %s", day).isEmpty();
                assertThat(plan.items()).as("day %s", day).isNotEmpty();
            }
        }

        @Test
        void theOrderOfInputAndAnotherRunMakeNoDifference() {
            PlanProblem problem = GeneratedDays.benchDay(5);
            Plan plan = Planner.plan(problem, Effort.tries(3, 3_000));
            List<Job> shuffled = new ArrayList<>(problem.jobs());
            Collections.shuffle(shuffled, new Random(1));
            PlanProblem same = new PlanProblem(
                    problem.asOf(),
                    problem.horizon(),
                    problem.crew(),
                    shuffled,
                    problem.prices(),
                    problem.lastOrder());
            assertThat(Planner.plan(same, Effort.tries(3, 3_000))).isEqualTo(plan);
            assertThat(Planner.plan(problem, Effort.tries(3, 3_000))).isEqualTo(plan);
        }

        @Test
        void moreEffortGivesNoWorsePlanOnMostDays() {
            int better = 0;
            for (int day = 0; day < 8; day++) {
                PlanProblem problem = GeneratedDays.benchDay(day);
                double little =
                        Planner.plan(problem, Effort.tries(1, 300)).value().totalHa();
                double much =
                        Planner.plan(problem, Effort.tries(1, 10_000)).value().totalHa();
                better += much > little ? 1 : 0;
            }
            assertThat(better).isGreaterThanOrEqualTo(7);
        }

        @Test
        void theClaimedTotalIsThatOfTheItems() {
            PlanProblem problem = GeneratedDays.benchDay(2);
            Plan plan = Planner.plan(problem, Effort.tries(1, 2_000));
            double drivingH =
                    plan.items().stream().mapToDouble(PlanItem::drivingHours).sum();
            assertThat(plan.value().drivingHa())
                    .isCloseTo(drivingH * problem.prices().drivingHaPerHour(), within(1e-9));
        }
    }
}
