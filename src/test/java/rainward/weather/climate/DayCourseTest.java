package rainward.weather.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.weather.sky.AirPhysics;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.sky.ReferenceEvapotranspiration;
import rainward.weather.sky.SolarGeometry;
import rainward.weather.trace.Skies;

/** Days spread to hours. */
class DayCourseTest {

    static final ZoneId ZONE = ZoneId.of("America/Detroit");
    static final LocalDate DAY = LocalDate.of(2026, 7, 14);

    static HourlyAir over(DailyWeather.Sky sky, LocalDate from, int hours) {
        var site = new DayCourse.Site(Skies.FARM, Skies.EVEN_YEAR);
        Instant start = from.atStartOfDay(ZONE).toInstant();
        return new DayCourse(
                        ZONE,
                        site,
                        day -> new DailyWeather(
                                day,
                                Optional.of(new TempRange(14, 29)),
                                OptionalDouble.empty(),
                                sky))
                .over(start, hours);
    }

    @Test
    void theWarmestHourIsInTheAfternoonAndTheColdestAtSunrise() {
        double[] temp = over(DailyWeather.Sky.UNKNOWN, DAY, 24).airTempC();
        int warmest = 0;
        int coldest = 0;
        for (int h = 1; h < 24; h++) {
            warmest = temp[h] > temp[warmest] ? h : warmest;
            coldest = temp[h] < temp[coldest] ? h : coldest;
        }
        assertThat(warmest).isBetween(14, 17);
        assertThat(coldest).isBetween(5, 7);
        assertThat(temp[warmest]).isCloseTo(29, within(0.2));
        assertThat(temp[coldest]).isCloseTo(14, within(2.0));
    }

    @Test
    void theDewPointIsThatOfTheMeanHumidityAndNeverAboveTheAir() {
        var sky = new DailyWeather.Sky(
                OptionalDouble.empty(), OptionalDouble.of(0.6), OptionalDouble.empty());
        HourlyAir air = over(sky, DAY, 24);
        // FAO-56 eq. 19: 0.6 of the mean of e(14) and e(29) is 1.681 kPa.
        assertThat(AirPhysics.saturationKpa(air.dewPointC()[15])).isCloseTo(1.681, within(0.002));
        for (int h = 0; h < 24; h++) {
            assertThat(air.dewPointC()[h]).isLessThanOrEqualTo(air.airTempC()[h]);
        }
    }

    @Test
    void withoutHumidityTheNightsLowestIsTheDewPoint() {
        assertThat(over(DailyWeather.Sky.UNKNOWN, DAY, 24).dewPointC()[12]).isEqualTo(14);
    }

    @ParameterizedTest(name = "{0}: {1} hours")
    @CsvSource({"2026-03-08, 23", "2026-11-01, 25"})
    void daysOfAnyLengthJoinWithoutAStep(LocalDate day, int hours) {
        double[] temp = over(DailyWeather.Sky.UNKNOWN, day, hours + 24).airTempC();
        for (int h = 1; h < temp.length; h++) {
            assertThat(Math.abs(temp[h] - temp[h - 1])).as("hour %d", h).isLessThan(4);
        }
    }

    /**
     * Two published ways for a day of which only temperatures are known: FAO-56 Penman-Monteith
     * with estimated sun, humidity and wind, here by the hour, and Hargreaves (eq. 52). FAO-56 lets
     * either stand in for the other in humid places to about a fifth.
     */
    @Test
    void theHoursOfATemperatureOnlyDayAskForAboutWhatHargreavesDoes() {
        HourlyAir air = over(DailyWeather.Sky.UNKNOWN, DAY, 24);
        double hours = Arrays.stream(
                        EvaporationDemand.of(air, Skies.FARM, 250).referenceEvapotranspirationMm())
                .sum();
        double top = SolarGeometry.extraterrestrialDayMjPerM2(
                Math.toRadians(Skies.FARM.latitudeDeg()), DAY.getDayOfYear());
        double hargreaves = ReferenceEvapotranspiration.hargreavesDayMm(14, 29, top);
        assertThat(hours / hargreaves).isBetween(0.8, 1.2);
    }
}
