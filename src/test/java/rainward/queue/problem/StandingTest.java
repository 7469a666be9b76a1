package rainward.queue.problem;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.GeoPoint;
import rainward.farm.Operation;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.check.PlanChecker;
import rainward.queue.plan.Planner;
import rainward.queue.plan.SmallFarm;
import rainward.queue.search.Effort;

/** The far field lies 20 km north of the yard, a near one beside it and one next to the yard. */
class StandingTest {

    private static final Instant NOON = SmallFarm.MONDAY.plus(Duration.ofHours(12));
    private static final Instant ELEVEN = NOON.minus(Duration.ofHours(1));

    private static SmallFarm.Plot at(String name, double kmNorth) {
        SmallFarm.Plot plot = SmallFarm.plot(name, 1);
        plot.kmNorth = kmNorth;
        plot.recipe = SmallFarm.SEED_ONLY;
        return plot;
    }

    private static StageRecord seeded(Instant at, String... machine) {
        return new StageRecord(
                "seed", Optional.of(at.minusSeconds(3600)), Optional.of(at), first(machine));
    }

    private static Optional<String> first(String... machine) {
        return List.of(machine).stream().findFirst();
    }

    private static SmallFarm.Plot done(SmallFarm.Plot plot, StageRecord... records) {
        plot.status = new FieldStatus(
                FieldState.SEEDED,
                List.of(records),
                Optional.of("brassica"),
                Optional.empty(),
                false);
        return plot;
    }

    private static Map<String, GeoPoint> places(Optional<Plan> order, SmallFarm.Plot... plots) {
        List<Standing.Worked> worked = new ArrayList<>();
        for (SmallFarm.Plot plot : plots) {
            worked.add(new Standing.Worked(plot.job().field(), plot.job().arrival()));
        }
        return Standing.recorded(worked, new SmallFarm().problem().crew(), order, NOON);
    }

    private static Plan told(String field, String machine, String person) {
        PlanItem item = new PlanItem(
                1,
                new PlanItem.Place(field, "property", "seed", Operation.SEED),
                new PlanItem.Hands(machine, person),
                new Window(ELEVEN.minusSeconds(3600), ELEVEN),
                0,
                Optional.empty());
        return new Plan(ELEVEN, List.of(item), List.of(), new Plan.Value(0, 0, 0, 0, 0));
    }

    private static GeoPoint placeOf(SmallFarm.Plot plot) {
        return plot.job().arrival();
    }

    @Test
    void aMachineIsWhereItWorkedLastAlsoOnSeededGround() {
        SmallFarm.Plot far = done(at("far", 20), seeded(ELEVEN, "seeder"));
        SmallFarm.Plot near =
                done(at("near", 1), seeded(ELEVEN.minus(Duration.ofHours(3)), "seeder"));
        assertThat(places(Optional.empty(), far, near)).isEqualTo(Map.of("seeder", placeOf(far)));
        assertThat(places(Optional.empty(), near, far)).isEqualTo(Map.of("seeder", placeOf(far)));
    }

    @Test
    void workThatGoesOnIsLaterThanAnyThatIsDone() {
        SmallFarm.Plot far = done(at("far", 20), seeded(ELEVEN, "seeder"));
        SmallFarm.Plot near = done(
                at("near", 1),
                new StageRecord(
                        "seed",
                        Optional.of(ELEVEN.minusSeconds(60)),
                        Optional.empty(),
                        Optional.of("seeder")));
        assertThat(places(Optional.empty(), far, near)).containsEntry("seeder", placeOf(near));
    }

    @Test
    void aRecordWithoutMachineIsOfTheOneItWasGivenTo() {
        SmallFarm.Plot far = done(at("far", 20), seeded(ELEVEN));
        assertThat(places(Optional.empty(), far)).isEmpty();
        assertThat(places(Optional.of(told("far", "seeder", "Ann")), far))
                .isEqualTo(Map.of("seeder", placeOf(far), "Ann", placeOf(far)));
    }

    @Test
    void whoeverWasToComeWithAnotherMachineIsNotTakenToBeThere() {
        SmallFarm.Plot far = done(at("far", 20), seeded(ELEVEN, "seeder"));
        assertThat(places(Optional.of(told("far", "roller", "Ann")), far))
                .isEqualTo(Map.of("seeder", placeOf(far)));
    }

    @Test
    void peopleAreAnywhereTheNextDayAndMachinesInTheYardAfterAFortnight() {
        SmallFarm.Plot far =
                done(at("far", 20), seeded(ELEVEN.minus(Duration.ofDays(1)), "seeder"));
        assertThat(places(Optional.of(told("far", "seeder", "Ann")), far))
                .isEqualTo(Map.of("seeder", placeOf(far)));
        SmallFarm.Plot old =
                done(at("far", 20), seeded(ELEVEN.minus(Duration.ofDays(14)), "seeder"));
        assertThat(places(Optional.empty(), old)).isEmpty();
    }

    /** 26 km of road at 30 km/h and 10 min of hitching end at half past twelve. */
    private static Plan onTheWay(String field) {
        Instant begins = NOON.plusSeconds(1800);
        PlanItem item = new PlanItem(
                1,
                new PlanItem.Place(field, "property", "seed", Operation.SEED),
                new PlanItem.Hands("seeder", "Ann"),
                new Window(begins, begins.plusSeconds(3600)),
                1,
                Optional.empty());
        return new Plan(ELEVEN, List.of(item), List.of(), new Plan.Value(0, 0, 0, 0, 0));
    }

    /** By hand: 30 min are left, 20 of them on the road: 10 km of 26, straight 7.7 of 20. */
    @Test
    void whoeverShouldHaveLeftIsOnTheRoad() {
        SmallFarm.Plot far = at("far", 20);

        Map<String, GeoPoint> places = places(Optional.of(onTheWay("far")), far);

        assertThat(places).containsOnlyKeys("seeder", "Ann");
        assertThat(places)
                .hasEntrySatisfying(
                        "seeder",
                        here -> assertThat(here.distanceKm(placeOf(far)))
                                .isCloseTo(20.0 * 10 / 26, within(0.05)));
        assertThat(places.values())
                .as("with the machine")
                .hasSize(2)
                .containsOnly(Objects.requireNonNull(places.get("Ann")));
    }

    @Test
    void whoeverIsSeenElsewhereSinceHasNotLeft() {
        SmallFarm.Plot near = done(at("near", 1), seeded(NOON.minusSeconds(60), "seeder"));

        assertThat(places(Optional.of(onTheWay("far")), near, at("far", 20)))
                .isEqualTo(Map.of("seeder", placeOf(near)));
    }

    @Test
    void arrivalHoldsThoughTheOrderIsMadeAnewEveryFewMinutes() {
        SmallFarm farm = new SmallFarm().with(at("far", 20));
        farm.asOf = NOON;
        Plan order = Planner.plan(farm.problem(), Effort.tries(1, 50));
        Instant arrival = order.items().get(0).work().from();

        for (farm.asOf = NOON; farm.asOf.isBefore(arrival); ) {
            farm.asOf = farm.asOf.plusSeconds(420);
            farm.standing = Standing.recorded(
                    List.of(new Standing.Worked(
                            farm.problem().jobs().get(0).field(), placeOf(at("far", 20)))),
                    farm.problem().crew(),
                    Optional.of(order),
                    farm.asOf);
            order = Planner.plan(farm.problem(), Effort.tries(1, 50));
            assertThat(PlanChecker.faults(farm.problem(), order)).isEmpty();
        }

        assertThat(Duration.between(arrival, order.items().get(0).work().from()).abs())
                .isLessThanOrEqualTo(Duration.ofMinutes(10));
    }

    /**
     * By hand: 1 km of road factor 1.3 at 30 km/h and 10 min of hitching are 12.6 min, rounded up
     * 13; from the yard it would be 21 km, 54.6 and 10 min: 65.
     */
    @Test
    void theOrderOfMiddaySetsOutFromTheLastField() {
        SmallFarm farm = new SmallFarm().with(at("next", 21));
        farm.asOf = NOON;
        PlanProblem fromYard = farm.problem();
        farm.standing = Map.of("seeder", placeOf(at("far", 20)));
        PlanProblem fromField = farm.problem();
        Plan yard = Planner.plan(fromYard, Effort.tries(1, 50));
        Plan field = Planner.plan(fromField, Effort.tries(1, 50));
        assertThat(yard.items().get(0).drivingHours() * 60).isCloseTo(65, within(1e-6));
        assertThat(field.items().get(0).drivingHours() * 60).isCloseTo(13, within(1e-6));
        assertThat(field.items().get(0).work().from()).isEqualTo(NOON.plusSeconds(13 * 60));
        assertThat(PlanChecker.faults(fromField, field)).isEmpty();
        assertThat(PlanChecker.faults(fromField, yard)).anyMatch(f -> f.contains("on the road"));
        assertThat(PlanChecker.faults(fromYard, field)).anyMatch(f -> f.contains("in time"));
    }

    /**
     * By hand: 20 km x 1.3 by car at 60 km/h are 26 min, then 1.3 km and a hitch with the seeder.
     */
    @Test
    void whoeverIsFarOffHasToDriveToTheMachineFirst() {
        SmallFarm farm = new SmallFarm().with(at("next", 1));
        farm.asOf = NOON;
        farm.people.clear();
        farm.people.add(SmallFarm.person("Ann"));
        farm.standing = Map.of("Ann", placeOf(at("far", 20)));
        Plan plan = Planner.plan(farm.problem(), Effort.tries(1, 50));
        assertThat(plan.items().get(0).work().from()).isEqualTo(NOON.plusSeconds((26 + 13) * 60));
        assertThat(PlanChecker.faults(farm.problem(), plan)).isEmpty();
        farm.standing = Map.of();
        Plan atOnce = Planner.plan(farm.problem(), Effort.tries(1, 50));
        farm.standing = Map.of("Ann", placeOf(at("far", 20)));
        assertThat(PlanChecker.faults(farm.problem(), atOnce))
                .anyMatch(f -> f.contains("Ann cannot be at"));
    }

    @Test
    void whatGoesOnWithoutAMachinesNameIsFreeOfFaults() {
        SmallFarm.Plot going = at("going", 20);
        going.status = new FieldStatus(
                FieldState.IN_WORK,
                List.of(new StageRecord(
                        "seed", Optional.of(ELEVEN), Optional.empty(), Optional.empty())),
                Optional.empty(),
                Optional.empty(),
                false);
        going.areaHa = 3;
        SmallFarm farm = new SmallFarm().with(going, at("next", 1));
        farm.asOf = NOON;
        Plan plan = Planner.plan(farm.problem(), Effort.tries(1, 50));
        assertThat(plan.items().get(0).place().field()).isEqualTo("going");
        assertThat(plan.items().get(0).drivingHours()).isZero();
        assertThat(PlanChecker.faults(farm.problem(), plan)).isEmpty();
    }
}
