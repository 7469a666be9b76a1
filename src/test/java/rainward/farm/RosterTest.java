package rainward.farm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rainward.store.journal.Hollows;

/** When the seed of a field went in, by a recipe that rolls afterwards. */
class RosterTest {

    private static final Instant SOWN = Hollows.JULY;
    private static final Instant ROLLED = SOWN.plus(Duration.ofHours(20));

    private static final Roster ROSTER = Roster.of(
            List.of(Hollows.PROPERTY),
            List.of(),
            List.of(Hollows.RECIPE),
            new Crew(
                    new DayClock(Hollows.ZONE, UnitSystem.METRIC),
                    new CrewHours(
                            LocalTime.of(7, 0),
                            LocalTime.of(17, 0),
                            Duration.ZERO,
                            Set.of(DayOfWeek.MONDAY),
                            false),
                    List.of(),
                    List.of(),
                    1.3));

    private static FieldCase field(FieldState state, StageRecord... stages) {
        return new FieldCase(
                Hollows.NORTH,
                new FieldStatus(
                        state, List.of(stages), Optional.of("rye"), Optional.empty(), false));
    }

    private static StageRecord done(String stage, Instant at) {
        return new StageRecord(stage, Optional.empty(), Optional.of(at), Optional.empty());
    }

    @Test
    void seedLiesFromItsOwnStageOn() {
        assertThat(ROSTER.sownAt(
                        field(FieldState.SEEDED, done("seed", SOWN), done("firm", ROLLED))))
                .contains(SOWN);
    }

    @Test
    void lastStageTellsWhereTheSeedingIsNotOnRecord() {
        assertThat(ROSTER.sownAt(field(FieldState.SEEDED, done("drill", SOWN)))).contains(SOWN);
    }

    @Test
    void fieldThatIsNotSeededHasNoSuchMoment() {
        assertThat(ROSTER.sownAt(field(FieldState.IN_WORK, done("mow", SOWN)))).isEmpty();
    }
}
