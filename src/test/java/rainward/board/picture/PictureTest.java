package rainward.board.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.board.picture.Boundary.Spot;
import rainward.farm.DayClock;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.SoilTexture;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.readiness.Figures;

/** Where things are drawn. */
class PictureTest {

    private static final ZoneId DETROIT = ZoneId.of("America/Detroit");
    private static final Field FIELD = new Field(
            "F1",
            "Mill Pond",
            new GeoPoint(42.0, -84.0),
            4,
            new Field.Ground(new SoilTexture(0.4, 0.2, 2.5), 0.02),
            new Field.Wish(List.of("rape"), "full", 1));

    @Test
    void placesOnTheMapAreThoseOfTheStandard() {
        // EPSG Guidance Note 7-2, Popular Visualisation Pseudo Mercator (EPSG:3857), worked
        // example:
        // 24 22 54.433 N, 100 20 0 W lies at E -11169055.58 m, N 2800000.00 m of a world that is
        // 40075016.69 m wide.
        double worldM = 40_075_016.6856;
        Spot spot = Spot.of(24 + 22 / 60.0 + 54.433 / 3600, -100 - 20 / 60.0);

        assertThat((spot.x() - 0.5) * worldM).isCloseTo(-11_169_055.58, within(0.01));
        assertThat((0.5 - spot.y()) * worldM).isCloseTo(2_800_000.00, within(0.5));
    }

    @Test
    void fieldWithoutABoundaryIsACircleOfItsArea() {
        Boundary circle = Boundary.of(FIELD, "{}");

        double minX = circle.rings().get(0).stream().mapToDouble(Spot::x).min().orElseThrow();
        double maxX = circle.rings().get(0).stream().mapToDouble(Spot::x).max().orElseThrow();
        double acrossM = (maxX - minX) * 40_075_016.7 * Math.cos(Math.toRadians(42));
        assertThat(Math.PI * acrossM * acrossM / 4).isCloseTo(40_000, within(500.0));
    }

    @Test
    void brokenBoundaryIsDrawnAsACircleToo() {
        assertThat(Boundary.of(FIELD, "{not json").rings()).hasSize(1);
    }

    @Test
    void tilesCoverTheDrawingAndCarryTheUsersAddress() {
        GroundMap map = GroundMap.of(
                "Mill Pond",
                List.of(FIELD),
                Map.of(),
                Optional.of("https://t.example/{z}/{x}/{y}.png"));

        assertThat(map.tiles()).isNotEmpty();
        assertThat(map.tiles())
                .allMatch(
                        tile -> tile.address().matches("https://t\\.example/\\d+/\\d+/\\d+\\.png"));
        assertThat(map.tiles().stream()
                        .mapToDouble(t -> Double.parseDouble(t.x()))
                        .min()
                        .orElseThrow())
                .isLessThanOrEqualTo(0);
    }

    @Test
    void dayOfTwentyThreeHoursHasItsTicksAtTheRightPlaces() {
        Instant start = Instant.parse("2026-03-08T05:00:00Z");
        TimeScale day =
                new TimeScale(new Window(start, Instant.parse("2026-03-09T04:00:00Z")), DETROIT);

        assertThat(day.percentOf(start.plus(Duration.ofMinutes(690)))).isCloseTo(50, within(1e-9));
        List<TimeScale.Tick> ticks = day.hours(6, new DayClock(DETROIT, UnitSystem.METRIC));
        assertThat(ticks)
                .extracting(TimeScale.Tick::label)
                .containsExactly("00:00", "06:00", "12:00", "18:00");
        assertThat(ticks.get(1).x()).isEqualTo("21.74%");
    }

    @Test
    void rangeOfWaterIsDrawnAroundItsMiddle() {
        Instant start = Instant.parse("2026-07-13T09:00:00Z");
        TimeScale scale =
                new TimeScale(new Window(start, start.plus(Duration.ofHours(2))), DETROIT);
        Figures.Course course = new Figures.Course(
                start,
                Duration.ofHours(1),
                List.of(new Figures.Range(0.1, 0.2, 0.3), new Figures.Range(0.1, 0.25, 0.5)));

        Curve curve = Curve.ofWater(course, scale, 0.5);

        assertThat(curve.line()).isEqualTo("0.0,60.0 500.0,50.0");
        assertThat(curve.range()).isEqualTo("0.0,80.0 500.0,80.0 500.0,0.0 0.0,40.0");
    }
}
