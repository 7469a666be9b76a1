package rainward.weather.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.weather.trace.Skies;

/** The sun above FAO-56 examples, ASCE-EWRI 2005 appendix C and latitudes 30 to 48. */
class SolarGeometryTest {

    static final double SOUTH_20_RAD = Math.toRadians(-20);
    static final int SEPTEMBER_3 = 246;

    @Nested
    class WorkedExamples {

        /** FAO-56 example 8: 20 S on 3 September. */
        @Test
        void distanceDeclinationAndSunsetAreThoseOfExample8() {
            double declination = SolarGeometry.declinationRad(SEPTEMBER_3);
            assertThat(SolarGeometry.inverseDistance(SEPTEMBER_3)).isCloseTo(0.985, within(5e-4));
            assertThat(declination).isCloseTo(0.120, within(5e-4));
            assertThat(SolarGeometry.sunsetAngleRad(SOUTH_20_RAD, declination))
                    .isCloseTo(1.527, within(5e-4));
            assertThat(SolarGeometry.extraterrestrialDayMjPerM2(SOUTH_20_RAD, SEPTEMBER_3))
                    .isCloseTo(32.2, within(0.05));
        }

        /** FAO-56 example 9: 11.7 hours of daylight. */
        @Test
        void daylightIsThatOfExample9() {
            assertThat(SolarGeometry.daylightHours(SOUTH_20_RAD, SEPTEMBER_3))
                    .isCloseTo(11.7, within(0.05));
        }

        /** FAO-56 example 19, N'Diaye, 14 to 15 h on 1 October, zone of 15 W. */
        @Test
        void anHoursRadiationIsThatOfExample19() {
            var ndiaye = new GeoPoint(16 + 13 / 60.0, -16.25);
            Instant start = Instant.parse("1997-10-01T15:00:00Z");
            assertThat(SolarGeometry.extraterrestrialHourMjPerM2(start, ndiaye))
                    .isCloseTo(3.543, within(0.003));
        }
    }

    @Nested
    class Tables {

        /**
         * Computed from FAO-56 eq. 21 outside the program,
         * {@code shared/reference/radiation_by_latitude.csv}; FAO-56 annex 2 prints the same within
         * 0.3 (from memory).
         */
        @Test
        void daysMatchTheTableByLatitude() {
            ReferenceTable table = ReferenceTable.read("radiation_by_latitude.csv");
            table.indices().forEach(row -> {
                double latitude = Math.toRadians(table.number(row, "latitude_deg"));
                table.columns().stream()
                        .filter(c -> c.startsWith("day_"))
                        .forEach(c -> assertThat(SolarGeometry.extraterrestrialDayMjPerM2(
                                        latitude, Integer.parseInt(c.substring(4))))
                                .as("%s, row %d", c, row)
                                .isCloseTo(table.number(row, c), within(0.006)));
            });
        }

        /**
         * ASCE-EWRI 2005 appendix C, Greeley, 1 and 2 July 2000; its clock names the start of each
         * hour in daylight time (solar noon falls between its hours 12 and 13). A minute of the
         * sun's course, as between a station and its stated meridian, is 0.013.
         */
        @Test
        void hoursMatchTheTableOfGreeley() {
            ReferenceTable table = ReferenceTable.read("asce2005_hourly.csv");
            Instant first = Instant.parse("2000-07-01T22:00:00Z");
            table.indices()
                    .forEach(row -> assertThat(SolarGeometry.extraterrestrialHourMjPerM2(
                                    first.plus(Duration.ofHours(row)), Greeley.PLACE))
                            .as("hour %d", row)
                            .isCloseTo(
                                    table.number(row, "extraterrestrial_mj_per_m2"),
                                    within(0.016)));
        }
    }

    @Nested
    class Laws {

        @ParameterizedTest
        @CsvSource({"2026-03-20, 42", "2026-06-21, 48", "2026-12-21, 30", "2026-07-14, -20"})
        void theHoursOfADayAddUpToTheDay(LocalDate day, double latitude) {
            var place = new GeoPoint(latitude, 0);
            Instant midnight = day.atStartOfDay(java.time.ZoneOffset.UTC).toInstant();
            double sum = IntStream.range(0, 24)
                    .mapToDouble(h -> SolarGeometry.extraterrestrialHourMjPerM2(
                            midnight.plus(Duration.ofHours(h)), place))
                    .sum();
            assertThat(sum)
                    .isCloseTo(
                            SolarGeometry.extraterrestrialDayMjPerM2(
                                    Math.toRadians(latitude), day.getDayOfYear()),
                            within(0.02));
        }

        @Test
        void thePolesHaveNoSunsetInJuneAndNoSunriseInDecember() {
            assertThat(SolarGeometry.daylightHours(Math.toRadians(80), 172)).isEqualTo(24);
            assertThat(SolarGeometry.daylightHours(Math.toRadians(80), 355)).isZero();
        }

        @Test
        void daylightIsSomeMinutesShorterThanForPeople() {
            LocalDate day = LocalDate.of(2026, 7, 14);
            Window light = SolarGeometry.daylight(day, Skies.FARM);
            Window seen =
                    SunTimes.daylight(day, SunTimesTest.DETROIT, Skies.FARM).orElseThrow();
            assertThat(Duration.between(seen.from(), light.from()).toMinutes()).isBetween(2L, 8L);
            assertThat(Duration.between(light.to(), seen.to()).toMinutes()).isBetween(2L, 8L);
        }
    }

    /**
     * NREL SPA report (Reda and Andreas, NREL/TP-560-34302): 17 October 2003, 12:30:30 at UTC-7,
     * 39.742476 N 105.1786 W, declination -9.314 degrees. The one-term declination of FAO-56 eq. 24
     * is a degree off in autumn.
     */
    @Test
    void declinationComesWithinADegreeAndAQuarterOfTheSolarPositionAlgorithm() {
        assertThat(Math.toDegrees(SolarGeometry.declinationRad(290)))
                .isCloseTo(-9.314, within(1.25));
    }
}
