package rainward.queue.bound;

import static org.assertj.core.api.Assertions.assertThat;
import static rainward.queue.plan.SmallFarm.plot;

import org.junit.jupiter.api.Test;
import rainward.queue.plan.Planner;
import rainward.queue.plan.SmallFarm;
import rainward.queue.problem.PlanProblem;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.search.Effort;

class UpperBoundTest {

    @Test
    void noPlanExceedsIt() {
        for (int day = 0; day < 8; day++) {
            PlanProblem problem = GeneratedDays.benchDay(day);
            double value = Planner.plan(problem, Effort.tries(1, 3_000)).value().totalHa();
            assertThat(UpperBound.of(problem, value)).as("day %s", day).isGreaterThan(value);
        }
    }

    @Test
    void aFarmWithRoomForAllIsBoundedByWhatItsFieldsCanEarn() {
        PlanProblem problem = new SmallFarm().with(plot("F1", 1), plot("F2", 1)).problem();
        double value = Planner.plan(problem, Effort.tries(1, 500)).value().totalHa();
        assertThat(UpperBound.of(problem, value)).isBetween(value, 2.0);
    }

    @Test
    void tillageThatIsShortLowersIt() {
        SmallFarm farm = new SmallFarm();
        for (int i = 0; i < 12; i++) {
            SmallFarm.Plot plot = plot("F" + i, 4);
            plot.worth = h -> h < 48 ? 1 : 0;
            farm.with(plot);
        }
        double one = UpperBound.of(farm.problem(), 20);
        farm.machines.add(SmallFarm.machine("second seeder", rainward.farm.Operation.SEED));
        farm.people.add(SmallFarm.person("Cy"));
        double twoSeeders = UpperBound.of(farm.problem(), 20);
        // Two days of 11 h at 1 ha/h: 22 ha tilled at most, however many seeders stand ready.
        assertThat(one).isLessThan(22.5);
        assertThat(twoSeeders).isLessThan(22.5);
    }
}
