package rainward.weather.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.Month;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.weather.trace.Skies;

/** The usual month, by day and by shorter periods. */
class MonthlyClimateTest {

    static final MonthlyClimate JULY = new MonthlyClimate(Month.JULY, 0.31, 8.2, 16, 28);

    @Test
    void aDayOfItIsWetAsOftenAsTheMonthSays() {
        assertThat(JULY.wetChance(24)).isCloseTo(0.31, within(1e-12));
        assertThat(JULY.meanWetMm(24)).isCloseTo(8.2, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 3, 6, 12, 48})
    void periodsOfAnyLengthAddUpToTheMonthsRain(double hours) {
        assertThat(JULY.wetChance(hours) * JULY.meanWetMm(hours))
                .isCloseTo(JULY.meanDayMm() * hours / 24, within(1e-9));
    }

    @Test
    void shorterPeriodsAreDrierMoreOftenThanTheirShareOfTheDay() {
        assertThat(JULY.wetChance(6)).isGreaterThan(0.31 / 4).isLessThan(0.31 / 2);
    }

    @Test
    void aPlaceTakesTheMonthOfItsOwnSun() {
        Instant lateOnTheThirtyFirst = Instant.parse("2026-08-01T03:00:00Z");
        assertThat(Skies.EVEN_YEAR.at(lateOnTheThirtyFirst, Skies.FARM).month())
                .isEqualTo(Month.JULY);
    }

    @Test
    void monthsOutOfOrderAreRefused() {
        List<MonthlyClimate> months = new java.util.ArrayList<>(Skies.EVEN_YEAR.months());
        Collections.swap(months, 3, 4);
        assertThatThrownBy(() -> new Climate("mixed up", 250, months))
                .hasMessage("mixed up: row 4 is not APRIL");
    }

    @Test
    void elevenMonthsAreRefused() {
        assertThatThrownBy(
                        () -> new Climate("short", 250, Skies.EVEN_YEAR.months().subList(0, 11)))
                .hasMessage("short: 11 months, must be 12");
    }
}
