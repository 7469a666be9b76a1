package rainward.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import rainward.farm.Season;
import rainward.intake.Shipped;
import rainward.stand.StandRules;

class PatienceTest {

    private static final Season SEASON = Shipped.mix("turnip and rape").season();

    private final Patience patience = new Patience(StandRules.DEFAULT.beyond());

    private double worth(int month, int day) {
        return patience.worth(SEASON, LocalDate.of(2026, month, day));
    }

    @Test
    void waitingIsWorthLessTheLaterItGets() {
        for (LocalDate day = LocalDate.of(2026, 7, 6);
                day.isBefore(LocalDate.of(2026, 8, 14));
                day = day.plusDays(1)) {
            assertThat(patience.worth(SEASON, day))
                    .isGreaterThan(patience.worth(SEASON, day.plusDays(1)));
        }
    }

    @Test
    void nothingIsGainedByWaitingPastTheLastDay() {
        assertThat(worth(8, 15)).isZero();
    }

    /** One day is left: chance 1 - exp(-1/9) of the rain x 0.7 x 0.7 x worth on 22 August. */
    @Test
    void lastDayIsCountedByHand() {
        double worthThen = SEASON.worthOn(LocalDate.of(2026, 8, 22));
        assertThat(worth(8, 14))
                .isCloseTo((1 - Math.exp(-1 / 9.0)) * 0.49 * worthThen, within(1e-12));
    }

    @Test
    void seedingThatWaitingBeatsKeepsALittle() {
        assertThat(patience.gain(0.4, 0.5)).isCloseTo(0.008, within(1e-12));
        assertThat(patience.gain(0.9, 0.5)).isCloseTo(0.4, within(1e-12));
    }
}
