package rainward.queue.reasons;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.queue.plan.SmallFarm.plot;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.queue.plan.Planner;
import rainward.queue.plan.SmallFarm;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Effort;

class OrderReasonsTest {

    private static FieldReason reason(SmallFarm farm, String field) {
        PlanProblem problem = farm.problem();
        Plan plan = Planner.plan(problem, Effort.tries(1, 1_000));
        return OrderReasons.of(problem, plan, field).orElseThrow();
    }

    private static Binding binding(FieldReason reason, String stage) {
        return reason.items().stream()
                .filter(i -> i.item().place().stage().equals(stage))
                .map(ItemReason::binding)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theFirstFieldWaitsForTheDayAndItsSeedForTheTillage() {
        FieldReason reason = reason(new SmallFarm().with(plot("F1", 2)), "F1");
        assertThat(binding(reason, "till")).isEqualTo(Binding.DAY_START);
        assertThat(binding(reason, "seed")).isEqualTo(Binding.STAGE_BEFORE);
    }

    @Test
    void aDaysDelayCostsWhatTheWorthLosesInADay() {
        FieldReason reason = reason(new SmallFarm().with(plot("F1", 2)), "F1");
        assertThat(reason.dayLaterHa()).isCloseTo(2 * 0.024, within(1e-6));
        assertThat(reason.words()).contains("a day later it would lose 0.05 ha");
    }

    @Test
    void theSecondFieldWaitsForTheMachineThatComesFromTheFirst() {
        SmallFarm.Plot first = plot("F1", 3);
        first.priority = 5;
        FieldReason reason = reason(new SmallFarm().with(first, plot("F2", 3)), "F2");
        assertThat(binding(reason, "till")).isEqualTo(Binding.MACHINE);
        assertThat(reason.before()).contains("F1");
    }

    @Test
    void wetGroundIsNamed() {
        SmallFarm.Plot plot = plot("F1", 2).stop(Operation.TILL, 0, 34);
        assertThat(binding(reason(new SmallFarm().with(plot), "F1"), "till"))
                .isEqualTo(Binding.GROUND);
    }

    @Test
    void aWaitThatMustBeKeptIsNamed() {
        SmallFarm.Plot plot = plot("F1", 2);
        plot.recipe = new Recipe(
                "wait",
                List.of(
                        SmallFarm.stage("till", Operation.TILL, 0, -1),
                        SmallFarm.stage("seed", Operation.SEED, 25, -1)));
        assertThat(binding(reason(new SmallFarm().with(plot), "F1"), "seed"))
                .isEqualTo(Binding.WAIT);
    }

    @Test
    void aBetterHourIsNamedAndHowLongItLasts() {
        SmallFarm.Plot plot = plot("F1", 2);
        plot.worth = h -> h >= 57 && h < 62 ? 0.9 : 0.2;
        FieldReason reason = reason(new SmallFarm().with(plot), "F1");
        assertThat(binding(reason, "seed")).isEqualTo(Binding.BETTER_HOUR);
        assertThat(reason.goodUntil().map(SmallFarm::hour)).contains(62.0);
    }

    @Test
    void aFieldThatIsNotInTheOrderHasNoReason() {
        SmallFarm.Plot plot = plot("F1", 2);
        plot.status = new FieldStatus(
                FieldState.DROPPED, List.of(), Optional.empty(), Optional.empty(), false);
        PlanProblem problem = new SmallFarm().with(plot).problem();
        Plan plan = Planner.plan(problem, Effort.tries(1, 10));
        assertThat(OrderReasons.of(problem, plan)).isEmpty();
    }
}
