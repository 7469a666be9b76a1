package rainward.weather.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Parton and Logan 1981, air at 150 cm; values computed from the published form outside the
 * program.
 */
class PartonLoganTest {

    static final TempRange DAY = new TempRange(18, 30);
    static final double RISE_H = 6;
    static final double SET_H = 20;

    @ParameterizedTest(name = "{0} h")
    @CsvSource({"8, 22.50", "12, 28.66", "14, 29.91", "20, 25.06"})
    void daylightHours(double clock, double tempC) {
        assertThat(PartonLogan.dayC(DAY, clock - RISE_H, SET_H - RISE_H))
                .isCloseTo(tempC, within(0.006));
    }

    @Test
    void midnight() {
        double sunset = PartonLogan.dayC(DAY, SET_H - RISE_H, SET_H - RISE_H);
        assertThat(PartonLogan.nightC(18, sunset, 4, 10)).isCloseTo(20.93, within(0.006));
    }

    @Test
    void theNightEndsWithinATenthOfTheFallAboveTheLowest() {
        // exp(-2.2) = 0.11: the form used does not come down all the way.
        assertThat(PartonLogan.nightC(18, 28, 10, 10)).isCloseTo(18 + 10 * 0.1108, within(0.001));
    }
}
