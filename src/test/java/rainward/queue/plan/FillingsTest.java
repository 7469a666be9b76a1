package rainward.queue.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.queue.check.PlanChecker;
import rainward.queue.problem.Filling;
import rainward.queue.problem.Fillings;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.reasons.OrderReasons;
import rainward.queue.reasons.WhatIf;
import rainward.queue.search.Effort;

/** A field that empties the seeder: one hectare, an hour of work at the seeder's pace. */
class FillingsTest {

    private static final Fillings FOUR_FILLS = new Fillings(
            Map.of(Operation.SEED, Map.of("seeder", new Filling(1, 4, Duration.ofMinutes(10)))));

    private static SmallFarm farm(Fillings fillings) {
        SmallFarm.Plot plot = SmallFarm.plot("F1", 1);
        plot.recipe = SmallFarm.SEED_ONLY;
        plot.fillings = fillings;
        return new SmallFarm().with(plot);
    }

    private static Plan plan(PlanProblem problem) {
        return Planner.plan(problem, Effort.tries(1, 50));
    }

    private static Duration work(Plan plan) {
        return plan.items().get(0).work().length();
    }

    /** By hand: 60 min of work, four stops of 20 min, 10 min of road. */
    @Test
    void thePlanHasTimeForEveryLoadAndTheCheckerAsksForIt() {
        PlanProblem known = farm(FOUR_FILLS).problem();
        PlanProblem unknown = farm(Fillings.NONE).problem();
        assertThat(work(plan(known))).isEqualTo(Duration.ofMinutes(150));
        assertThat(work(plan(unknown))).isEqualTo(Duration.ofMinutes(60));
        assertThat(PlanChecker.faults(known, plan(known))).isEmpty();
        assertThat(PlanChecker.faults(known, plan(unknown)))
                .anyMatch(fault -> fault.contains("needs PT2H30M"));
    }

    @Test
    void theReasonSaysHowManyLoadsAndWhereTheyAreNotKnown() {
        Machine spreader = SmallFarm.machine("spreader", Operation.SPREAD);
        SmallFarm.Plot plot = SmallFarm.plot("F1", 1);
        plot.recipe = new Recipe(
                "spread and seed",
                List.of(
                        SmallFarm.stage("spread", Operation.SPREAD, 0, -1),
                        SmallFarm.stage("seed", Operation.SEED, 0, -1)));
        SmallFarm farm = new SmallFarm().with(plot);
        farm.machines.add(spreader);
        farm.people.add(SmallFarm.person("Cy"));
        PlanProblem unknown = farm.problem();
        Fillings loads = new Fillings(Map.of(
                Operation.SPREAD, Map.of("spreader", new Filling(2, 3, Duration.ofMinutes(10)))));
        PlanProblem known = unknown.withJobs(
                unknown.jobs().stream().map(j -> j.filling(loads)).toList());

        assertThat(spreading(known)).endsWith("; 3 loads over the whole field, 70 min to fill");
        assertThat(spreading(unknown)).contains("loads are not known");
    }

    private static String spreading(PlanProblem problem) {
        return OrderReasons.of(problem, plan(problem)).get(0).items().get(0).words();
    }

    @Test
    void whatEmptiesOneMachineSaysNothingOfAnother() {
        Machine drill = SmallFarm.machine("drill", Operation.SEED);
        assertThat(FOUR_FILLS.of(SmallFarm.SEEDER, Operation.SEED)).isPresent();
        assertThat(FOUR_FILLS.of(drill, Operation.SEED)).isEmpty();
        assertThat(FOUR_FILLS.of(SmallFarm.SEEDER, Operation.SPREAD)).isEmpty();
    }

    /** Else another seeder would look faster than the one that it is like. */
    @Test
    void anAddedMachineIsEmptiedLikeTheOneItIsLike() {
        PlanProblem added = WhatIf.of(farm(FOUR_FILLS).problem(), "add seeder").problem();
        Machine second = added.crew().machines().stream()
                .filter(m -> m.name().equals("seeder 2"))
                .findFirst()
                .orElseThrow();
        assertThat(added.jobs().get(0).fillings().of(second, Operation.SEED))
                .isEqualTo(Optional.of(new Filling(1, 4, Duration.ofMinutes(10))));
    }
}
