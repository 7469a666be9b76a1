package rainward.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.cycle.SeedInGround.State;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.StageRecord;

/** What the weather made of seed since it went in, and when it should show. */
class SeedInGroundTest {

    private static final String FIELD = "Mill 1";
    private static final double STORM_DAYS_AHEAD = DryJuly.STORM_AFTER_HOURS / 24.0;

    private static SeedInGround seed(int sownDaysAgo, Map<Integer, Double> lateMm) {
        return Objects.requireNonNull(seeds(sownDaysAgo, lateMm).get(FIELD));
    }

    private static Map<String, SeedInGround> seeds(int sownDaysAgo, Map<Integer, Double> lateMm) {
        return seeds(
                DryJuly.MONDAY_FIVE.minus(Duration.ofDays(sownDaysAgo)).plus(Duration.ofHours(9)),
                lateMm);
    }

    private static Map<String, SeedInGround> seeds(Instant sownAt, Map<Integer, Double> lateMm) {
        FieldCase sown = new FieldCase(
                DryJuly.field(FIELD, DryJuly.MILL, 2),
                new FieldStatus(
                        FieldState.SEEDED,
                        List.of(
                                done("till", sownAt.minus(Duration.ofHours(3))),
                                done("seed", sownAt)),
                        Optional.of(DryJuly.BRASSICA.name()),
                        Optional.empty(),
                        false));
        return SeedInGround.all(DryJuly.input(
                List.of(sown, DryJuly.untouched("Mill 2", DryJuly.MILL, 2)),
                Map.of(
                        DryJuly.MILL.name(),
                        new CycleInput.PropertyWeather(
                                Optional.of(DryJuly.storm(DryJuly.MILL.place())),
                                DryJuly.past(DryJuly.MILL.place(), lateMm)))));
    }

    private static StageRecord done(String stage, Instant at) {
        return new StageRecord(stage, Optional.of(at), Optional.of(at), Optional.empty());
    }

    @Test
    void drySeedWaitsAndShowsOnlyAfterTheStormThatIsForecast() {
        SeedInGround dry = seed(6, Map.of());

        assertThat(dry.state()).isEqualTo(State.DRY);
        assertThat(dry.emergence().p10Days()).isGreaterThan(5.6 + STORM_DAYS_AHEAD);
    }

    @Test
    void rainThatCameSetsTheDay() {
        SeedInGround wetted = seed(6, Map.of(4, 20.0));
        SeedInGround later = seed(6, Map.of(1, 20.0));

        assertThat(wetted.state()).isEqualTo(State.GROWING);
        assertThat(later.state()).isEqualTo(State.GROWING);
        assertThat(wetted.emergence().p50Days())
                .isLessThan(later.emergence().p50Days() - 1.5)
                .isLessThan(seed(6, Map.of()).emergence().p10Days());
    }

    @Test
    void whatIsUpByNowHasNoRangeLeft() {
        SeedInGround up = seed(12, Map.of(11, 20.0));

        assertThat(up.state()).isEqualTo(State.GROWING);
        assertThat(up.emergence().p90Days()).isEqualTo(up.emergence().p10Days()).isLessThan(11.6);
    }

    @Test
    void seedThatWentWithTheWaterIsTakenForLost() {
        SeedInGround lost = seed(10, Map.of(9, 160.0));

        assertThat(lost.state()).isEqualTo(State.LOST);
        assertThat(lost.cause()).isEqualTo("washed out");
        assertThat(lost.emergence().known()).isFalse();
    }

    @Test
    void seedSownBeforeItsSeasonComesUpAllTheSame() {
        assertThat(DryJuly.BRASSICA.season().allowsSowing(LocalDate.of(2026, 7, 1)))
                .isFalse();
        assertThat(seed(12, Map.of(11, 20.0)).emergence().known()).isTrue();
    }

    @Test
    void seedThatLayDryForWeeksIsStillAnswered() {
        SeedInGround dry = seed(20, Map.of());

        assertThat(dry.state()).isEqualTo(State.DRY);
        assertThat(dry.emergence().known()).isTrue();
        assertThat(dry.emergence().p10Days()).isGreaterThan(19.6 + STORM_DAYS_AHEAD);
    }

    /** The model goes in steps of four hours; what went in two hours ago has none behind it. */
    @Test
    void ofSeedThatHasJustGoneInNothingIsSaidYet() {
        for (int hours = 0; hours <= 4; hours++) {
            Instant justNow = DryJuly.MONDAY_FIVE.minus(Duration.ofHours(hours));
            assertThat(seeds(justNow, Map.of())).as(hours + " h ago").isEmpty();
        }
        Instant sixHours = DryJuly.MONDAY_FIVE.minus(Duration.ofHours(6));
        assertThat(seeds(sixHours, Map.of())).containsOnlyKeys(FIELD);
    }

    @Test
    void onlySeededFieldsThatTheRecordReachesAreAnswered() {
        assertThat(seeds(6, Map.of())).containsOnlyKeys(FIELD);
        assertThat(seeds(60, Map.of())).isEmpty();
    }
}
