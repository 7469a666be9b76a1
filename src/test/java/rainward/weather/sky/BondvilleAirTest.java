package rainward.weather.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.DayCourse;
import rainward.weather.climate.TempRange;
import rainward.weather.trace.Skies;

/**
 * The course of a day made from its lowest and highest beside half-hourly air and sun at Bondville,
 * Illinois, 1998 (NOAA land-surface test case), May to September. Nothing is fitted to it.
 */
class BondvilleAirTest {

    static final Path FILE = Path.of("../shared/data/bondville-1998/halfhourly.dat");
    static final GeoPoint PLACE = new GeoPoint(40.01, -88.37);
    static final ZoneOffset ZONE = ZoneOffset.ofHours(-6);
    static final LocalDate FIRST = LocalDate.of(1998, 5, 1);
    static final int DAYS = 150;

    static double[] tempC = {};
    static double[] sunMjPerM2 = {};

    @BeforeAll
    static void read() throws IOException {
        assumeTrue(Files.exists(FILE), "no " + FILE + ": recorded weather is not on this machine");
        List<double[]> half = new ArrayList<>();
        try (var lines = Files.lines(FILE)) {
            lines.map(line -> line.trim().split("\\s+"))
                    .map(r -> new double[] {Double.parseDouble(r[4]), Double.parseDouble(r[7])})
                    .forEach(half::add);
        }
        int start = 48 * (FIRST.getDayOfYear() - 1);
        tempC = new double[24 * DAYS];
        sunMjPerM2 = new double[24 * DAYS];
        for (int h = 0; h < tempC.length; h++) {
            double[] a = half.get(start + 2 * h);
            double[] b = half.get(start + 2 * h + 1);
            tempC[h] = (a[0] + b[0]) / 2;
            sunMjPerM2[h] = (Math.max(0, a[1]) + Math.max(0, b[1])) / 2 * 0.0036;
        }
    }

    static DailyWeather day(LocalDate date) {
        int from = 24 * (int) Duration.between(midnight(FIRST), midnight(date)).toDays();
        int at = Math.max(0, Math.min(24 * (DAYS - 1), from));
        double[] hours = Arrays.copyOfRange(tempC, at, at + 24);
        var range = new TempRange(
                Arrays.stream(hours).min().orElseThrow(),
                Arrays.stream(hours).max().orElseThrow());
        return new DailyWeather(
                date,
                java.util.Optional.of(range),
                OptionalDouble.empty(),
                DailyWeather.Sky.UNKNOWN);
    }

    static Instant midnight(LocalDate date) {
        return date.atStartOfDay().toInstant(ZONE);
    }

    /** Parton and Logan 1981 state mean absolute errors of 1.2 to 2.6 C for their levels. */
    @Test
    void hoursOfTemperatureAreAsCloseAsPublished() {
        var course = new DayCourse(
                ZONE, new DayCourse.Site(PLACE, Skies.EVEN_YEAR), BondvilleAirTest::day);
        double[] reckoned = course.over(midnight(FIRST), tempC.length).airTempC();
        double error = 0;
        double bias = 0;
        for (int h = 0; h < tempC.length; h++) {
            error += Math.abs(reckoned[h] - tempC[h]) / tempC.length;
            bias += (reckoned[h] - tempC[h]) / tempC.length;
        }
        System.out.println("mean absolute error and bias [C]" + ": " + error + " " + bias);
        assertThat(error).isLessThan(2.0);
        assertThat(Math.abs(bias)).isLessThan(1.0);
    }

    /** Each hour of the day on its clearest day: timing and height of the clear sky at once. */
    @Test
    void theClearestHoursFollowTheClearSky() {
        double[] clearest = new double[24];
        for (int h = 0; h < sunMjPerM2.length; h++) {
            Instant start = midnight(FIRST).plus(Duration.ofHours(h));
            double clear = SkyRadiation.clearSkyMjPerM2(
                    SolarGeometry.extraterrestrialHourMjPerM2(start, PLACE), 213);
            if (clear > 0.5) {
                clearest[h % 24] = Math.max(clearest[h % 24], sunMjPerM2[h] / clear);
            }
        }
        System.out.println("clearest share by hour" + ": " + Arrays.toString(clearest));
        for (int hour = 8; hour <= 16; hour++) {
            assertThat(clearest[hour]).as("hour %d", hour).isBetween(0.9, 1.2);
        }
    }
}
