package rainward.weather.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.weather.trace.Skies;

/** Sunrise and sunset against other people's reckoning, to a minute. */
class SunTimesTest {

    static final ZoneId DETROIT = ZoneId.of("America/Detroit");

    @ParameterizedTest(name = "{6}")
    @CsvSource({
        // latitude, longitude, day, zone, rise, set, who reckoned it
        "40, -90, 2026-08-15, America/Chicago, 06:11:45, 19:56:29, 'NOAA (Meeus) iterated'",
        "44, -92, 2026-08-25, America/Chicago, 06:23:26, 19:55:51, 'NOAA (Meeus) iterated'",
        "35, -86.5, 2026-09-15, America/Chicago, 06:28:59, 18:52:45, 'NOAA (Meeus) iterated'",
        "40, -83, 2026-12-21, America/New_York, 07:50:21, 17:10:02, 'NOAA (Meeus) iterated'",
        "39.742476, -105.1786, 2003-10-17, America/Denver, 07:12:43, 18:18:51, 'SPA report, rise'",
        "40.9, -74.3, 1990-06-25, America/New_York, 05:26:29, 20:33:01, 'Almanac for Computers'"
    })
    void riseAndSetAreThoseOf(
            double latitude,
            double longitude,
            LocalDate day,
            ZoneId zone,
            LocalTime rise,
            LocalTime set,
            String who) {
        Window light =
                SunTimes.daylight(day, zone, new GeoPoint(latitude, longitude)).orElseThrow();
        assertThat(seconds(light.from().atZone(zone).toLocalTime()))
                .as("rise, %s", who)
                .isCloseTo(seconds(rise), within(60));
        assertThat(seconds(light.to().atZone(zone).toLocalTime()))
                .as("set, %s", who)
                .isCloseTo(seconds(set), within(60));
        assertThat(light.from().atZone(zone).toLocalDate()).isEqualTo(day);
        assertThat(light.to().atZone(zone).toLocalDate()).isEqualTo(day);
    }

    private static int seconds(LocalTime time) {
        return time.toSecondOfDay();
    }

    @ParameterizedTest(name = "{0}, a day of {1} hours")
    @CsvSource({"2026-03-08, 23", "2026-11-01, 25"})
    void clockChangesLeaveTheSunAlone(LocalDate day, int hours) {
        Window before = SunTimes.daylight(day.minusDays(1), DETROIT, Skies.FARM).orElseThrow();
        Window light = SunTimes.daylight(day, DETROIT, Skies.FARM).orElseThrow();
        assertThat(Duration.between(before.from(), light.from()).toMinutes())
                .isCloseTo(24 * 60, within(3L));
        assertThat(Duration.between(
                        day.atStartOfDay(DETROIT), day.plusDays(1).atStartOfDay(DETROIT)))
                .isEqualTo(Duration.ofHours(hours));
    }

    @Test
    void theMidnightSunFillsTheDayAndPolarNightHasNone() {
        var north = new GeoPoint(82.5, -62.3);
        assertThat(SunTimes.daylight(LocalDate.of(2026, 6, 21), DETROIT, north).orElseThrow())
                .isEqualTo(new Window(
                        LocalDate.of(2026, 6, 21).atStartOfDay(DETROIT).toInstant(),
                        LocalDate.of(2026, 6, 22).atStartOfDay(DETROIT).toInstant()));
        assertThat(SunTimes.daylight(LocalDate.of(2026, 12, 21), DETROIT, north))
                .isEmpty();
    }
}
