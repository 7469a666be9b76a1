package rainward.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.farm.Crew;
import rainward.farm.CrewHours;
import rainward.farm.DayClock;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.farm.Operation;
import rainward.farm.Property;
import rainward.farm.Season;
import rainward.farm.SoilTexture;
import rainward.farm.Species;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Traces;

class WindowDetectorTest {

    private static final ZoneId ZONE = ZoneId.of("America/Detroit");

    /** Monday 08:00 in the farm's zone. */
    private static final Instant NOW = Instant.parse("2026-07-13T12:00:00Z");

    private static final GeoPoint CREEK = new GeoPoint(42.0, -85.0);
    private static final GeoPoint NEXT_DOOR = new GeoPoint(42.05, -85.0);
    private static final GeoPoint FAR = new GeoPoint(42.8, -85.0);
    private static final SoilTexture LOAM = new SoilTexture(0.4, 0.2, 2.5);
    private static final WindowRules.Watch WATCH = WindowRules.usual(ZONE).watch();
    private static final Crew CREW = new Crew(
            new DayClock(ZONE, UnitSystem.METRIC),
            new CrewHours(
                    LocalTime.of(7, 0),
                    LocalTime.of(18, 0),
                    Duration.ZERO,
                    EnumSet.allOf(DayOfWeek.class),
                    false),
            List.of(),
            List.of(),
            1.3);

    /**
     * {@code wet} of {@code count} traces get {@code mm} in hour {@code hour}, shifted by trace.
     */
    private static Traces traces(int count, int wet, int hour, double mm) {
        int hours = 100;
        double[][] rain = new double[hours][count];
        double[][] peak = new double[hours][count];
        for (int t = 0; t < wet; t++) {
            rain[hour + t % 5][t] = mm;
            peak[hour + t % 5][t] = 2 * mm;
        }
        double[] zero = new double[hours];
        return new Traces(
                new HourlyAir(NOW, zero, zero, zero, zero),
                new EvaporationDemand(zero, zero),
                rain,
                peak);
    }

    private static Mix brassica() {
        Species seed = new Species(
                "brassica",
                new Species.Cardinal(3, 27, 40, 50),
                40,
                -0.9,
                0.3,
                0.9,
                new Species.SeedlingGrowth(30, 10, 3),
                300_000);
        MonthDay last = MonthDay.of(9, 1);
        return new Mix(
                "brassica",
                List.of(new MixComponent(seed, 6, 9)),
                1.3,
                0.3,
                new Season(MonthDay.of(6, 1), last, last, MonthDay.of(10, 1), 1, 0.5));
    }

    private static PropertyWatch watch(String name, GeoPoint place, Traces traces) {
        Field field = new Field(
                "F " + name,
                name,
                place,
                2,
                new Field.Ground(LOAM, 0.02),
                new Field.Wish(List.of("brassica"), "r", 1));
        return new PropertyWatch(
                new Property(name, place),
                traces,
                List.of(new PropertyWatch.Pending(field, brassica())));
    }

    private static PlanItem seeding(String property, int hour, int hours) {
        Instant start = NOW.plus(Duration.ofHours(hour));
        return new PlanItem(
                1,
                new PlanItem.Place("F " + property, property, "seed", Operation.SEED),
                new PlanItem.Hands("seeder", "A"),
                new Window(start, start.plus(Duration.ofHours(hours))),
                0.5,
                Optional.of(new PlanItem.Sowing("brassica", 0.7, 0.7)));
    }

    private static List<StormWindow> detect(List<PropertyWatch> properties, PlanItem... items) {
        Plan plan = new Plan(NOW, List.of(items), List.of(), new Plan.Value(0, 0, 0, 0, 0));
        return WindowDetector.detect(properties, plan, CREW, WATCH, NOW);
    }

    @Test
    void chanceArrivalAmountAndHardRainAreThoseOfTheTraces() {
        StormWindow window =
                detect(List.of(watch("Creek", CREEK, traces(100, 60, 30, 15)))).get(0);
        assertThat(window.chance()).isCloseTo(0.6, within(1e-9));
        assertThat(window.arrival().p10()).isEqualTo(NOW.plus(Duration.ofHours(30)));
        assertThat(window.arrival().p50()).isEqualTo(NOW.plus(Duration.ofHours(32)));
        assertThat(window.arrival().p90()).isEqualTo(NOW.plus(Duration.ofHours(34)));
        assertThat(window.amount().p50Mm()).isEqualTo(15);
        assertThat(window.hardRainChance()).isCloseTo(0.6, within(1e-9));
    }

    @Test
    void rainThatDoesNotReachTheSeedIsNoWindow() {
        double leastMm = UsefulRain.thresholdMm(LOAM, brassica());
        assertThat(leastMm).isBetween(4.0, 9.0);
        assertThat(detect(List.of(watch("Creek", CREEK, traces(100, 60, 30, leastMm - 0.1)))))
                .isEmpty();
        assertThat(detect(List.of(watch("Creek", CREEK, traces(100, 60, 30, leastMm + 0.1)))))
                .hasSize(1);
    }

    @Test
    void rainBeyondTheLeadTimeIsNoWindow() {
        assertThat(detect(List.of(watch("Creek", CREEK, traces(100, 60, 80, 15)))))
                .isEmpty();
    }

    @Test
    void neighboursShareAWindowAndFarPropertiesDoNot() {
        List<StormWindow> windows = detect(List.of(
                watch("Creek", CREEK, traces(100, 60, 30, 15)),
                watch("Door", NEXT_DOOR, traces(100, 80, 31, 15)),
                watch("Hill", FAR, traces(100, 60, 30, 15))));
        assertThat(windows).hasSize(2);
        assertThat(windows).anyMatch(w -> w.properties().equals(java.util.Set.of("Creek", "Door")));
        assertThat(windows).anyMatch(w -> Math.abs(w.chance() - 0.7) < 1e-9);
    }

    @Test
    void aFieldFitsWhereItsSeedingEndsBeforeTheEarlyArrival() {
        PropertyWatch creek = watch("Creek", CREEK, traces(100, 60, 30, 15));
        assertThat(detect(List.of(creek), seeding("Creek", 24, 6)).get(0).leave())
                .isEmpty();
        assertThat(detect(List.of(creek), seeding("Creek", 25, 6)).get(0).leave())
                .containsExactly("F Creek");
        assertThat(detect(List.of(creek)).get(0).leave()).containsExactly("F Creek");
    }

    @Test
    void theLastSafeStartLeavesTimeForTheFieldItselfAndForThoseAfterIt() {
        PropertyWatch creek = watch("Creek", CREEK, traces(100, 60, 30, 15));
        PropertyWatch door = watch("Door", NEXT_DOOR, traces(100, 60, 30, 15));
        StormWindow window = detect(
                        List.of(creek, door), seeding("Creek", 0, 2), seeding("Door", 3, 3))
                .get(0);
        Instant rain = NOW.plus(Duration.ofHours(30));
        Instant lastDoor = rain.minus(Duration.ofHours(3));
        Instant lastCreek = lastDoor.minus(Duration.ofMinutes(30)).minus(Duration.ofHours(2));
        assertThat(window.fits())
                .extracting(StormWindow.Fit::lastSafeStart)
                .containsExactly(lastCreek, lastDoor);
    }

    @Test
    void aheadOfRainAtNightTheLastSafeStartLiesInTheShiftBefore() {
        PropertyWatch creek = watch("Creek", CREEK, traces(100, 60, 18, 15));
        StormWindow window = detect(List.of(creek), seeding("Creek", 0, 2)).get(0);
        Instant fourInTheAfternoon = NOW.plus(Duration.ofHours(8));
        assertThat(window.fits().get(0).lastSafeStart()).isEqualTo(fourInTheAfternoon);
    }
}
