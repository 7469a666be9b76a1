package rainward.queue.reasons;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.farm.Operation;
import rainward.queue.check.PlanChecker;
import rainward.queue.plan.Planner;
import rainward.queue.plan.SmallFarm;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.search.Effort;

class OrderChangesTest {

    private static PlanProblem after(PlanProblem p, List<Job> jobs, Plan order, double price) {
        return new PlanProblem(
                p.asOf(),
                p.horizon(),
                p.crew(),
                jobs,
                new PlanProblem.Prices(
                        p.prices().drivingHaPerHour(), p.prices().overtimeHaPerHour(), price),
                Optional.of(order));
    }

    @Test
    void withNoLastOrderNothingHasChanged() {
        PlanProblem problem = GeneratedDays.benchDay(0);
        Plan plan = Planner.plan(problem, Effort.tries(1, 500));
        assertThat(OrderChanges.of(problem, plan).changes()).isEmpty();
    }

    @Test
    void anUnchangedForecastChangesNothing() {
        for (int day = 0; day < 8; day++) {
            PlanProblem problem = GeneratedDays.benchDay(day);
            Plan order = Planner.plan(problem, Effort.tries(1, 20_000));
            PlanProblem again = after(problem, problem.jobs(), order, 0.0025);
            Plan plan = Planner.plan(again, Effort.tries(2, 5_000));
            assertThat(PlanChecker.faults(again, plan)).isEmpty();
            assertThat(OrderChanges.of(again, plan).changes()).as("day %s", day).hasSizeLessThan(4);
        }
    }

    /**
     * The row that is read off an order leads back to it, work that is done again included. Of one
     * of these thirty orders a field is lost that is the last to be seeded.
     */
    @Test
    void aHighPriceKeepsTheOrderOnNearlyAllDays() {
        int kept = 0;
        for (int day = 0; day < GeneratedDays.BENCH_DAYS; day++) {
            PlanProblem problem = GeneratedDays.benchDay(day);
            Plan order = Planner.plan(problem, Effort.tries(1, 5_000));
            PlanProblem again = after(problem, problem.jobs(), order, 1);
            Plan plan = Planner.plan(again, Effort.tries(2, 500));
            boolean moved = OrderChanges.of(again, plan).changes().stream()
                    .anyMatch(c -> c.kind() == OrderChange.Kind.MOVED);
            kept += !moved && plan.value().changeHa() < 1e-9 ? 1 : 0;
        }
        assertThat(kept).isGreaterThanOrEqualTo(GeneratedDays.BENCH_DAYS - 1);
    }

    /** The only field of a machine keeps its turn whenever it comes; the crew loads for Monday. */
    @Test
    void anotherDayIsAChangeThoughTheTurnIsKept() {
        SmallFarm.Plot plot = SmallFarm.plot("F1", 2);
        plot.recipe = SmallFarm.SEED_ONLY;
        SmallFarm farm = new SmallFarm().with(plot);
        Plan monday = Planner.plan(farm.problem(), Effort.tries(1, 100));
        plot.stop(Operation.SEED, 0, 24);
        SmallFarm later = new SmallFarm().with(plot);
        later.lastOrder = Optional.of(monday);
        later.prices = new PlanProblem.Prices(0, 0, 0.01);
        Plan tuesday = Planner.plan(later.problem(), Effort.tries(1, 100));
        assertThat(tuesday.value().changeHa())
                .isCloseTo(4 * 0.01 * monday.value().earnedHa(), within(1e-9));
        assertThat(OrderChanges.of(later.problem(), tuesday).changes())
                .extracting(OrderChange::kind)
                .containsExactly(OrderChange.Kind.MOVED);
    }

    @Test
    void aFieldThatComesAnewAndOneThatGoesAreNamedWithWhatTheyGain() {
        PlanProblem whole = GeneratedDays.benchDay(7);
        List<Job> jobs = new ArrayList<>(whole.jobs());
        Job fresh = jobs.remove(4);
        Plan order = Planner.plan(after(whole, jobs, emptyOrder(whole), 0), Effort.tries(1, 3_000));
        PlanProblem now = after(whole, whole.jobs(), order, 0.0025);
        Plan plan = Planner.plan(now, Effort.tries(1, 3_000));
        OrderChanges changes = OrderChanges.of(now, plan);
        assertThat(plan.seedingOf(fresh.name())).isPresent();
        assertThat(changes.changes())
                .anyMatch(c -> c.field().equals(fresh.name()) && c.kind() == OrderChange.Kind.NEW);
        assertThat(changes.gainHa()).isGreaterThanOrEqualTo(-1e-9);
    }

    private static Plan emptyOrder(PlanProblem problem) {
        return new Plan(problem.asOf(), List.of(), List.of(), new Plan.Value(0, 0, 0, 0, 0));
    }
}
