package rainward.queue.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rainward.queue.check.PlanChecker;
import rainward.queue.problem.Job;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.search.Effort;

class GroupsTest {

    private static final PlanProblem LARGE =
            GeneratedDays.day(GeneratedDays.Kind.ONE_STORM, 4, 120, 3);

    @Test
    void fieldsMachinesAndPeopleAreSharedOutOnce() {
        List<PlanProblem> groups = Groups.of(LARGE);
        assertThat(groups).hasSize(3);
        assertThat(groups.stream().flatMap(g -> g.jobs().stream()).map(Job::name))
                .doesNotHaveDuplicates()
                .hasSize(120);
        assertThat(groups.stream().flatMap(g -> g.crew().machines().stream()))
                .doesNotHaveDuplicates()
                .hasSize(12);
        assertThat(groups.stream().flatMap(g -> g.crew().people().stream()))
                .doesNotHaveDuplicates()
                .hasSize(12);
        assertThat(groups).allMatch(g -> g.jobs().size() == 40);
    }

    @Test
    void aPlanOfManyGroupsKeepsAllRules() {
        Plan plan = Planner.plan(LARGE, Effort.tries(1, 6_000));
        assertThat(PlanChecker.faults(LARGE, plan)).isEmpty();
        assertThat(plan.items().stream().map(i -> i.hands().machine()).collect(Collectors.toSet()))
                .hasSizeGreaterThan(8);
    }

    @Test
    void aSingleSeederKeepsTheFieldsTogether() {
        assertThat(Groups.of(GeneratedDays.day(GeneratedDays.Kind.DRY, 1, 100, 1)))
                .hasSize(1);
    }
}
