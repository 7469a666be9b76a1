package rainward.queue.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.ortools.sat.CpSolverStatus;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.queue.model.Screening;
import rainward.queue.model.ShopBuilder;
import rainward.queue.pace.WorkTime;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.search.Annealing;
import rainward.queue.search.Effort;
import rainward.queue.search.Genome;
import rainward.queue.shop.Decoder;
import rainward.queue.shop.OpenTime;
import rainward.queue.shop.Placement;
import rainward.queue.shop.Shop;

/** Plans against a general-purpose solver (CP-SAT) that knows the rules from elsewhere. */
class SolverTest {

    private static final int HORIZON_MINUTES = GeneratedDays.HORIZON_HOURS * 60;

    /** The day without fields that take longer than four hours, and without overtime. */
    static Shop shop(GeneratedDays.Kind kind, long seed, int fields) {
        PlanProblem day = GeneratedDays.day(kind, seed, 2 * fields, 1);
        List<Job> jobs = day.jobs().stream()
                .filter(j -> day.crew().machines().stream()
                        .allMatch(m ->
                                WorkTime.minutes(m, j.field().field().areaHa(), Optional.empty())
                                        <= OpenTime.IN_ONE_GO_MINUTES))
                .limit(fields)
                .collect(Collectors.toList());
        CrewHours hours = day.crew().hours();
        Crew crew = new Crew(
                day.crew().clock(),
                new CrewHours(
                        hours.start(),
                        hours.end(),
                        Duration.ZERO,
                        hours.days(),
                        hours.daylightOnly()),
                day.crew().people(),
                day.crew().machines(),
                day.crew().roadFactor());
        PlanProblem small = new PlanProblem(
                day.asOf(), day.horizon(), crew, jobs, day.prices(), day.lastOrder());
        return ShopBuilder.build(ShopBuilder.inOrder(small, Screening.of(small).fit()));
    }

    /** A plan of the search, and what it claims to be worth. */
    record Searched(List<Placement> placed, double valueHa) {

        static Searched of(Shop shop, long tries) {
            Decoder decoder = new Decoder(shop);
            int[] items = IntStream.range(0, shop.items().size()).toArray();
            Genome start = new Genome(decoder.parts().row(items), new int[decoder.genes()]);
            Annealing.Found found =
                    Annealing.search(decoder, List.of(start), Effort.tries(1, tries));
            return new Searched(decoder.placements(found.best()), found.value());
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"ONE_STORM", "DRIZZLE", "WET_SPELL", "ONE_CREW_SHORT"})
    void everyPlanIsAcceptedAndWorthWhatItClaims(GeneratedDays.Kind kind) {
        Shop shop = shop(kind, 3, 10);
        Searched plan = Searched.of(shop, 3_000);
        ShopModel.Answer answer = new ShopModel(shop, HORIZON_MINUTES).fixed(plan.placed());
        assertThat(answer.status()).isEqualTo(CpSolverStatus.OPTIMAL);
        assertThat(answer.valueHa()).isCloseTo(plan.valueHa(), within(0.01));
    }

    @Test
    void aPlanThatBreaksARuleIsRefused() {
        Shop shop = shop(GeneratedDays.Kind.TWO_STORMS, 3, 6);
        List<Placement> placed = new ArrayList<>(Searched.of(shop, 1_000).placed());
        Placement last = placed.get(placed.size() - 1);
        placed.set(
                placed.size() - 1,
                new Placement(
                        last.item(),
                        last.task(),
                        last.hand(),
                        last.start() - 600,
                        last.finish() - 600,
                        last.drive(),
                        last.setting(),
                        last.option()));
        assertThat(new ShopModel(shop, HORIZON_MINUTES).fixed(placed).status())
                .isEqualTo(CpSolverStatus.INFEASIBLE);
    }
}
