package rainward.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import rainward.farm.Season;
import rainward.intake.Shipped;

class PatienceTest {

    private static final Season SEASON = Shipped.mix("turnip and rape").season();

    private static Patience with(double waitingHa) {
        return new Patience(DryJuly.roster().crew(), waitingHa);
    }

    private static double worth(int month, int day) {
        return with(1).kept(SEASON, LocalDate.of(2026, month, day), 1).readyWorth();
    }

    @Test
    void keptSeedIsWorthLessTheLaterItGets() {
        for (LocalDate day = LocalDate.of(2026, 7, 6);
                day.isBefore(LocalDate.of(2026, 8, 14));
                day = day.plusDays(1)) {
            assertThat(with(1).kept(SEASON, day, 1).readyWorth())
                    .isGreaterThan(with(1).kept(SEASON, day.plusDays(1), 1).readyWorth());
        }
    }

    @Test
    void nothingIsLeftAfterTheLastDay() {
        assertThat(worth(8, 16)).isZero();
    }

    /** One day is left: chance 1 - exp(-1/9) of the rain x 0.7 x 0.7 x worth on 22 August. */
    @Test
    void lastDayIsCountedByHand() {
        double worthThen = SEASON.worthOn(LocalDate.of(2026, 8, 22));
        assertThat(worth(8, 15))
                .isCloseTo((1 - Math.exp(-1 / 9.0)) * 0.49 * worthThen, within(1e-12));
    }

    /** A mix that is sown later only is worth the same on all days before its season. */
    @Test
    void aSeasonThatIsStillToComeCountsInFull() {
        Season rye = Shipped.mix("rye wheat and oats").season();
        LocalDate first = rye.firstSowing().atYear(2026);
        assertThat(with(1).kept(rye, first.minusDays(30), 1))
                .isEqualTo(with(1).kept(rye, first, 1));
    }

    /** The crew seeds 3 m x 7 km/h x 0.7 x 12 h / 2 = 8.82 ha a day, four days a rain. */
    @Test
    void groundThatTheCrewWillNotGetToIsWorthLess() {
        LocalDate last = SEASON.lastSowing().atYear(2026);
        double rains = 1 - Math.exp(-1 / 9.0);
        double share = rains * 4 * 8.82 / 100;
        assertThat(with(100).kept(SEASON, last, 1).readyWorth())
                .isCloseTo(share * with(1).kept(SEASON, last, 1).readyWorth(), within(1e-9));
    }

    @Test
    void aFieldThatIsNotReadyHasLessToHopeFor() {
        var kept = with(1).kept(SEASON, LocalDate.of(2026, 7, 20), 1);
        assertThat(kept.rawWorth()).isCloseTo(0.95 * kept.readyWorth(), within(1e-12));
    }
}
