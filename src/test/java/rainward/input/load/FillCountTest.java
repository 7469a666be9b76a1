package rainward.input.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rainward.farm.Crew;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Roster;
import rainward.input.Us;
import rainward.queue.problem.Filling;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;

/** A truck of 9,000 lb on 4.2 acres at 2 tons of lime and a blend of urea and potash. */
class FillCountTest {

    private static final Field MILL = Demo.field("Mill 1", 4.2);
    private static final List<Supplies.Spread> LIME_AND_BLEND = List.of(
            new Supplies.Spread("ag lime", Us.kgPerHa(4_000), false),
            new Supplies.Spread("urea", Us.kgPerHa(98), true),
            new Supplies.Spread("potash", Us.kgPerHa(26), true));

    private static Machine machine(String name, Operation operation) {
        return new Machine(
                name,
                Set.of(operation),
                new Machine.WorkPace(9, 12, 0.6, 0.3),
                new Machine.Travel(60, Duration.ofMinutes(5), new GeoPoint(42, -85)),
                Optional.empty(),
                Machine.MassClass.HEAVY,
                Machine.USUAL_MIX_CHANGE);
    }

    private static Supplies supplies(
            List<Field> fields, List<Supplies.Spread> spreads, Optional<GeoPoint> loadsAt) {
        Supplies demo = Demo.supplies();
        Crew nobody = demo.roster().crew();
        Crew crew = new Crew(
                nobody.clock(),
                nobody.hours(),
                List.of(),
                List.of(
                        machine("spreader", Operation.SPREAD),
                        machine("roller seeder", Operation.SEED)),
                1.3);
        return new Supplies(
                Roster.of(
                        List.copyOf(demo.roster().properties().values()),
                        List.copyOf(demo.roster().mixes().values()),
                        List.copyOf(demo.roster().recipes().values()),
                        crew),
                Map.copyOf(fields.stream().collect(Collectors.toMap(Field::name, f -> f))),
                demo.seed(),
                spreads.isEmpty() ? Map.of() : Map.of(MILL.name(), spreads),
                new Supplies.Gear(
                        demo.gear().boxes(),
                        Map.of("spreader", new Supplies.Spreader(Us.kg(9_000), loadsAt)),
                        demo.gear().density(),
                        List.of()));
    }

    private static Optional<Filling> spreading(Supplies supplies) {
        return new FillCount(supplies)
                .of(MILL)
                .of(machine("spreader", Operation.SPREAD), Operation.SPREAD);
    }

    private static Filling seeding(Supplies supplies) {
        return new FillCount(supplies)
                .of(MILL)
                .of(machine("roller seeder", Operation.SEED), Operation.SEED)
                .orElseThrow();
    }

    /** By hand: 16,800 lb of lime are two loads, 521 lb of blend are one, in two passes. */
    @Test
    void theRateOfTheFieldDecidesHowManyLoads() {
        assertThat(spreading(supplies(List.of(MILL), LIME_AND_BLEND, Optional.empty())))
                .contains(new Filling(2, 3, Duration.ZERO));
    }

    /** By hand: 20 km north are 26 km of road, 26 min at 60 km/h and 5 to fold; two ways, twice. */
    @Test
    void eachLoadAfterTheFirstIsFetchedWhereItLies() {
        GeoPoint heap = new GeoPoint(42.0 + 20 / 111.195, -84.4);
        Filling filling = spreading(supplies(List.of(MILL), LIME_AND_BLEND, Optional.of(heap)))
                .orElseThrow();
        assertThat(filling.fillCount()).isEqualTo(3);
        assertThat(filling.road().toMinutes()).isBetween(4 * 31L, 4 * 32L);
    }

    @Test
    void whereNothingIsWorkedOutNothingIsSaid() {
        assertThat(spreading(supplies(List.of(MILL), List.of(), Optional.empty())))
                .isEmpty();
    }

    /**
     * By hand: 4.2 acres of 2 / 0.9 + 4 / 0.8 lb are 30.33 lb or 13.76 kg; boxes of 36 L hold 23.04
     * kg, 2.304 of it as heel: 0.663 of a fill.
     */
    @Test
    void aSeederIsEmptiedByItsRateAndItsBoxes() {
        Supplies one = supplies(List.of(MILL), List.of(), Optional.empty());
        assertThat(seeding(one).fillCount()).isCloseTo(13.76 / 20.736, within(1e-3));
    }

    @Test
    void whereSeveralMixesAreSownTheBoxesAreEmptiedAtEachGate() {
        Field oats = new Field(
                "Mill 3",
                MILL.property(),
                MILL.place(),
                1,
                MILL.ground(),
                new Field.Wish(List.of("oats"), "brassica", 1));
        assertThat(seeding(supplies(List.of(MILL, oats), List.of(), Optional.empty()))
                        .fillCount())
                .isEqualTo(1);
    }

    @Test
    void seedWithoutATagLeavesTheSeederToItsArea() {
        Field oats = new Field(
                "Mill 3",
                MILL.property(),
                MILL.place(),
                1,
                MILL.ground(),
                new Field.Wish(List.of("oats"), "brassica", 1));
        Supplies supplies = supplies(List.of(oats), List.of(), Optional.empty());
        assertThat(new FillCount(supplies).of(oats).known()).isEmpty();
    }

    /** What the order reckons with and what the sheets of two days say is one number. */
    @Test
    void theSheetsOfAFieldSpreadOnTwoDaysAddUpToTheOrdersCount() {
        Supplies supplies = supplies(List.of(MILL), LIME_AND_BLEND, Optional.empty());
        double ordered = spreading(supplies).orElseThrow().fillCount();
        for (double first : new double[] {0.1, 0.3, 0.5, 0.55, 0.9}) {
            Plan plan = new Plan(
                    Demo.plan().asOf(),
                    List.of(part(0, first), part(1, 1 - first)),
                    List.of(),
                    new Plan.Value(0, 0, 0, 0, 0));
            int loads = 0;
            for (int day = 0; day < 2; day++) {
                loads += LoadSheet.of(Demo.TUESDAY.plusDays(day), plan, supplies)
                        .machines()
                        .get(0)
                        .loads();
            }
            assertThat(loads).as("first day " + first).isEqualTo((int) ordered);
        }
    }

    private static PlanItem part(int day, double share) {
        PlanItem whole = Demo.item(
                MILL.name(),
                Operation.SPREAD,
                Demo.TUESDAY.plusDays(day),
                LocalTime.of(9, 0),
                Optional.empty());
        return new PlanItem(
                1,
                whole.place(),
                whole.hands(),
                whole.work(),
                whole.drivingHours(),
                Optional.empty(),
                share);
    }
}
