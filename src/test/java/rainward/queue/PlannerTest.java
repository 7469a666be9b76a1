package rainward.queue;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rainward.queue.check.PlanChecker;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.search.Effort;

class PlannerTest {

    @Test
    void everyPlanOfTheBenchDaysKeepsAllRules() {
        for (int day = 0; day < GeneratedDays.BENCH_DAYS; day++) {
            PlanProblem problem = GeneratedDays.benchDay(day);
            Plan plan = Planner.plan(problem, Effort.tries(1, 2_000));
            assertThat(PlanChecker.faults(problem, plan)).as("day %s", day).isEmpty();
        }
    }
}
