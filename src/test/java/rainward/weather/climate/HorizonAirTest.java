package rainward.weather.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rainward.weather.rain.HourGrid;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Skies;

/** Air beyond the ends of a forecast. */
class HorizonAirTest {

    static HorizonAir.Drawn drawn(HourlyAir given, int from, int to) {
        return HorizonAir.over(
                given, HourGrid.covering(Skies.hours(from, to)), Skies.FARM, Skies.EVEN_YEAR);
    }

    @Test
    void insideTheForecastNothingChanges() {
        HourlyAir given = Skies.air(168);
        HorizonAir.Drawn drawn = drawn(given, 0, 168);
        assertThat(drawn.air().airTempC()).isEqualTo(given.airTempC());
        assertThat(drawn.warning()).isEmpty();
    }

    @Test
    void beyondItTheLastDayFadesIntoTheUsualAndTheUserIsTold() {
        HourlyAir cold = new HourlyAir(
                Skies.START,
                Skies.all(48, 2),
                Skies.all(48, 0),
                Skies.all(48, 9),
                Skies.all(48, 1));
        HorizonAir.Drawn drawn = drawn(cold, 0, 48 + 240);
        double[] wind = drawn.air().windMps();
        assertThat(wind[48]).isBetween(8.8, 9.0);
        // A day later 0.65 of the departure from 2 m/s is left, ten days later a hundredth.
        assertThat(wind[48 + 23]).isCloseTo(2 + 7 * 0.65, within(1e-9));
        assertThat(wind[48 + 239]).isCloseTo(2, within(0.1));
        assertThat(drawn.warning()).hasValueSatisfying(w -> assertThat(w).contains("usual course"));
    }

    @Test
    void theDaysStayDaysBeyondTheForecast() {
        double[] temp = drawn(Skies.air(168), 0, 240).air().airTempC();
        double warmest = java.util.Arrays.stream(temp, 192, 216).max().orElseThrow();
        double coldest = java.util.Arrays.stream(temp, 192, 216).min().orElseThrow();
        assertThat(warmest).isBetween(26.0, 29.0);
        assertThat(coldest).isBetween(13.0, 16.5);
    }

    @Test
    void hoursBeforeTheForecastTakeThoseOfItsFirstDay() {
        HourlyAir given = Skies.air(48);
        double[] temp = drawn(given, -3, 24).air().airTempC();
        assertThat(temp[0]).isEqualTo(given.airTempC()[21]);
        assertThat(temp[3]).isEqualTo(given.airTempC()[0]);
    }

    @Test
    void aForecastWithoutAirLeavesTheMonth() {
        HourlyAir none = Skies.air(0);
        double[] temp = drawn(none, 0, 48).air().airTempC();
        assertThat(java.util.Arrays.stream(temp).average().orElseThrow()).isBetween(18.0, 23.0);
    }
}
