package rainward.weather.trace;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.weather.climate.Climate;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.climate.TempRange;
import rainward.weather.rain.RainObservation;
import rainward.weather.skill.ForecastCase;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;

/**
 * Nothing untrue gets into the weather: each field says its name, what it was and what it must be.
 */
class BadWeatherTest {

    @FunctionalInterface
    interface Making {
        Object of(double value);
    }

    static Making air(int series) {
        return value -> {
            double[][] s = {Skies.all(3, 20), Skies.all(3, 10), Skies.all(3, 2), Skies.all(3, 0.5)};
            s[series][1] = value;
            return new HourlyAir(Skies.START, s[0], s[1], s[2], s[3]);
        };
    }

    static DailyWeather.Sky sky(OptionalDouble sun, OptionalDouble damp, OptionalDouble wind) {
        return new DailyWeather.Sky(sun, damp, wind);
    }

    static final OptionalDouble NONE = OptionalDouble.empty();

    static Stream<Arguments> fields() {
        return Stream.of(
                field("airTempC[1]", -60, 60, air(0)),
                field("dewPointC[1]", -80, 40, air(1)),
                field("windMps[1]", 0, 100, air(2)),
                field("skyCoverFraction[1]", 0, 1, air(3)),
                field("amountMm", 0, 1000, v -> Skies.amount(0, 1, v)),
                field("probability", 0, 1, v -> Skies.chance(0, 1, v)),
                field(
                        "amountMm",
                        0,
                        1000,
                        v -> new RainObservation(Skies.hours(0, 1), v, "gauge", Skies.START)),
                field("airTempMinC", -60, 50, v -> new MonthlyClimate(JULY, 0.3, 8, v, 55)),
                field("airTempMaxC", -60, 55, v -> new MonthlyClimate(JULY, 0.3, 8, -60, v)),
                field("wetDayFraction", 0, 0.98, v -> new MonthlyClimate(JULY, v, 8, 10, 20)),
                field("meanWetDayMm", 0.254, 100, v -> new MonthlyClimate(JULY, 0.3, v, 10, 20)),
                field("airTempMinC", -60, 60, v -> new TempRange(v, 60)),
                field("airTempMaxC", -60, 60, v -> new TempRange(-60, v)),
                field("2026-07-14 rainMm", 0, 1000, v -> DailyWeather.of(DAY, RANGE, v)),
                field("radiationMjPerM2", 0, 50, v -> sky(OptionalDouble.of(v), NONE, NONE)),
                field("humidityFraction", 0, 1, v -> sky(NONE, OptionalDouble.of(v), NONE)),
                field("windMps", 0, 60, v -> sky(NONE, NONE, OptionalDouble.of(v))),
                field("probability", 0, 1, v -> new ForecastCase(1, v, true)),
                field("decorrelationKm", 0.1, 10_000, v -> new TraceSettings.Dependence(v, 20)),
                field("persistenceHours", 0.1, 1000, v -> new TraceSettings.Dependence(40, v)),
                field("elevationM", -430, 6000, v -> new Climate("x", v, MONTHS)),
                field("latitudeDeg", -90, 90, v -> new GeoPoint(v, 0)),
                field("longitudeDeg", -180, 180, v -> new GeoPoint(0, v)));
    }

    static final java.time.Month JULY = java.time.Month.JULY;
    static final LocalDate DAY = LocalDate.of(2026, 7, 14);
    static final TempRange RANGE = new TempRange(12, 25);
    static final List<MonthlyClimate> MONTHS = Skies.EVEN_YEAR.months();

    static Arguments field(String name, double least, double greatest, Making making) {
        return Arguments.of(name, least, greatest, making);
    }

    @ParameterizedTest(name = "{0} within {1} to {2}")
    @MethodSource("fields")
    void takesBothEndsAndRefusesWhatLiesBeyondAndNoNumber(
            String name, double least, double greatest, Making making) {
        assertThatCode(() -> making.of(least)).doesNotThrowAnyException();
        assertThatCode(() -> making.of(greatest)).doesNotThrowAnyException();
        double[] untrue = {
            Math.nextDown(least), Math.nextUp(greatest), Double.NaN, Double.POSITIVE_INFINITY
        };
        for (double value : untrue) {
            assertThatThrownBy(() -> making.of(value))
                    .hasMessage(name + " is " + value + ", must be " + least + " to " + greatest);
        }
    }

    @Test
    void aSeriesWithAMissingHourIsRefused() {
        assertThatThrownBy(() -> new HourlyAir(
                        Skies.START,
                        Skies.all(3, 20),
                        Skies.all(2, 10),
                        Skies.all(3, 2),
                        Skies.all(3, 0)))
                .hasMessage("dewPointC has 2 hours, not 3");
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-07-14T09:30:00Z", "2026-07-14T09:00:00.5Z"})
    void aSeriesThatStartsWithinAnHourIsRefused(Instant start) {
        double[] one = {0};
        assertThatThrownBy(() -> new HourlyAir(start, one, one, one, one))
                .hasMessage("series starts at " + start + ", must be a full hour");
    }

    @Test
    void timesTurnedRoundAreRefused() {
        assertThatThrownBy(() -> Skies.hours(6, 0))
                .hasMessage("window ends at 2026-07-14T09:00:00Z, before it starts at"
                        + " 2026-07-14T15:00:00Z");
    }

    @Test
    void amountsThatOverlapAreRefused() {
        assertThatThrownBy(() -> new ForecastSeries.RainOutlook(
                        List.of(Skies.amount(0, 6, 1), Skies.amount(5, 12, 1)), List.of()))
                .hasMessageStartingWith("amounts: ")
                .hasMessageContaining("starts before");
    }

    @Test
    void chancesOutOfOrderAreRefused() {
        assertThatThrownBy(() -> new ForecastSeries.RainOutlook(
                        List.of(), List.of(Skies.chance(6, 12, 0), Skies.chance(0, 6, 0))))
                .hasMessageStartingWith("probabilities: ");
    }

    @Test
    void gapsBetweenIntervalsAreTaken() {
        assertThatCode(() -> new ForecastSeries.RainOutlook(
                        List.of(Skies.amount(0, 6, 1), Skies.amount(12, 18, 1)), List.of()))
                .doesNotThrowAnyException();
    }

    @Test
    void rainObservedInNoTimeIsRefused() {
        Window none = Skies.hours(3, 3);
        assertThatThrownBy(() -> new RainObservation(none, 1, "gauge", Skies.START))
                .hasMessageStartingWith("rain fell in no time");
    }

    @Test
    void noTraceIsRefused() {
        assertThatThrownBy(() -> new TraceSettings(0, 1, Skies.hours(0, 6)))
                .hasMessage("traces is 0.0, must be 1.0 to 10000.0");
    }
}
