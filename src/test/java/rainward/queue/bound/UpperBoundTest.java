package rainward.queue.bound;

import static org.assertj.core.api.Assertions.assertThat;
import static rainward.queue.plan.SmallFarm.plot;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.util.EnumSet;
import org.junit.jupiter.api.Test;
import rainward.farm.CrewHours;
import rainward.queue.plan.Planner;
import rainward.queue.plan.SmallFarm;
import rainward.queue.problem.PlanProblem;
import rainward.queue.sample.GeneratedDays;
import rainward.queue.search.Effort;
import rainward.queue.shop.ExactBest;
import rainward.queue.shop.Shop;
import rainward.queue.shop.SmallShops;

class UpperBoundTest {

    /** Few steps give a looser bound, but a bound all the same. */
    private static final int FEW_STEPS = 60;

    @Test
    void noOrderAndNoChoiceOfMachinesExceedsIt() {
        for (long seed = 0; seed < 300; seed++) {
            int items = 2 + (int) (seed % 3);
            int machines = 1 + (int) (seed % 2);
            Shop shop = SmallShops.shop(seed, new SmallShops.Size(items, machines, 300));
            double exact = ExactBest.overOrdersAndHands(shop);
            double bound = RouteBound.of(shop, SmallShops.DAYS * 24, exact, FEW_STEPS);
            assertThat(bound).as("seed %s", seed).isGreaterThan(exact - 1e-9);
        }
    }

    @Test
    void norDoesAnyExceedTheBoundThatSeesHoursOnly() {
        for (long seed = 0; seed < 30; seed++) {
            Shop shop = SmallShops.shop(seed, new SmallShops.Size(4, 2, 300));
            double exact = ExactBest.overOrdersAndHands(shop);
            assertThat(CapacityBound.of(shop, SmallShops.DAYS * 24, exact))
                    .as("seed %s", seed)
                    .isGreaterThan(exact - 1e-9);
        }
    }

    /** With nothing to share, the best way of the only machine is the best there is. */
    @Test
    void oneFieldIsBoundedByJustWhatItEarns() {
        PlanProblem problem = new SmallFarm().with(plot("F1", 2)).problem();
        double value = Planner.plan(problem, Effort.tries(1, 500)).value().totalHa();
        assertThat(UpperBound.of(problem, value)).isBetween(value, value * 1.005);
    }

    @Test
    void noPlanOfAnyKindOfDayExceedsIt() {
        GeneratedDays.Kind[] kinds = GeneratedDays.Kind.values();
        for (int seed = 0; seed < 80; seed++) {
            PlanProblem problem =
                    GeneratedDays.day(kinds[seed % kinds.length], seed, 2 + seed % 9, 1);
            double value =
                    Planner.plan(problem, Effort.tries(seed, 1_500)).value().totalHa();
            assertThat(UpperBound.of(problem, value, FEW_STEPS))
                    .as("seed %s", seed)
                    .isGreaterThan(value - 1e-9);
        }
    }

    @Test
    void noPlanOfTheBenchDaysExceedsIt() {
        for (int day = 0; day < 8; day++) {
            PlanProblem problem = GeneratedDays.benchDay(day);
            double value = Planner.plan(problem, Effort.tries(1, 3_000)).value().totalHa();
            assertThat(UpperBound.of(problem, value, FEW_STEPS))
                    .as("day %s", day)
                    .isGreaterThan(value);
        }
    }

    /** Long work rests over night, at another minute with overtime than without. */
    @Test
    void workThatRestsOverNightIsBounded() {
        SmallFarm farm = new SmallFarm().with(plot("F1", 9), plot("F2", 7), plot("F3", 5));
        farm.hours = new CrewHours(
                LocalTime.of(7, 0),
                LocalTime.of(16, 0),
                Duration.ofHours(2),
                EnumSet.allOf(DayOfWeek.class),
                false);
        farm.prices = new PlanProblem.Prices(0.02, 0.05, 0);
        PlanProblem problem = farm.problem();
        double value = Planner.plan(problem, Effort.tries(1, 5_000)).value().totalHa();
        assertThat(UpperBound.of(problem, value)).isBetween(value, value * 1.03);
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
