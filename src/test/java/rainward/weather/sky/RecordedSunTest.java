package rainward.weather.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rainward.weather.climate.TempRange;

/**
 * Radiation that is reckoned from the range of temperature beside what 27 stations of the US
 * Climate Reference Network measured in 2020 (NOAA, public domain). Nothing is fitted to them; bias
 * and error of each station are reported.
 */
class RecordedSunTest {

    static final Path FOLDER = Path.of("../shared/data/uscrn-2020");

    /** A day with all four values; elevation is not given and taken as 200 m. */
    record Day(double latitudeDeg, LocalDate date, TempRange range, double measuredMjPerM2) {

        double topMjPerM2() {
            return SolarGeometry.extraterrestrialDayMjPerM2(
                    Math.toRadians(latitudeDeg), date.getDayOfYear());
        }

        double reckonedMjPerM2() {
            return SkyRadiation.fromTemperatureRangeMjPerM2(range.spanC(), topMjPerM2(), 200);
        }
    }

    @BeforeAll
    static void find() {
        assumeTrue(Files.isDirectory(FOLDER), "no " + FOLDER + ": recorded weather is not here");
    }

    static List<Path> stations() {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(f -> f.toString().endsWith(".csv")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<Day> days(Path station) {
        try {
            List<String> lines = Files.readAllLines(station);
            List<String> head = Arrays.asList(lines.get(0).split(","));
            return lines.stream()
                    .skip(1)
                    .flatMap(line -> day(head, line.split(",", -1)))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Stream<Day> day(List<String> head, String[] row) {
        String low = row[head.indexOf("t_daily_min")];
        String high = row[head.indexOf("t_daily_max")];
        String sun = row[head.indexOf("solarad_daily")];
        if (low.isEmpty() || high.isEmpty() || sun.isEmpty()) {
            return Stream.empty();
        }
        return Stream.of(new Day(
                Double.parseDouble(row[head.indexOf("latitude")]),
                LocalDate.parse(row[head.indexOf("lst_date")]),
                new TempRange(Double.parseDouble(low), Double.parseDouble(high)),
                Double.parseDouble(sun)));
    }

    static double mean(List<Day> days, ToDoubleFunction<Day> value) {
        return days.stream().mapToDouble(value).average().orElseThrow();
    }

    /**
     * Below this share of clear sky on its clearest days a station has something before its sensor.
     */
    static final double IN_THE_OPEN = 0.85;

    /**
     * Found: 11 % too much in the median of 26 stations (1 to 22 %), 4 to 5 MJ/m2 a day. The
     * coefficient for inland places is high for the humid East; it is kept as published, since what
     * would fit these stations need not fit others. The bounds notice a change.
     */
    @Test
    void radiationFromTheRangeOfTemperatureIsATenthTooHighInTheHumidEast() {
        double[] biases = stations().stream()
                .filter(station -> clearest(station) >= IN_THE_OPEN)
                .mapToDouble(station -> reported(station))
                .toArray();
        assertThat(biases.length).isGreaterThan(20);
        double median = Arrays.stream(biases).sorted().toArray()[biases.length / 2];
        assertThat(median).isBetween(0.0, 0.2);
        assertThat(Arrays.stream(biases).map(Math::abs).max().orElseThrow()).isLessThan(0.35);
    }

    private static double reported(Path station) {
        List<Day> days = days(station);
        double measured = mean(days, Day::measuredMjPerM2);
        double bias = mean(days, Day::reckonedMjPerM2) / measured - 1;
        double error =
                Math.sqrt(mean(days, d -> Math.pow(d.reckonedMjPerM2() - d.measuredMjPerM2(), 2)));
        System.out.println(station.getFileName().toString() + ": "
                + String.format(Locale.ROOT, "bias %+.1f %%, rms %.2f MJ/m2", 100 * bias, error));
        return bias;
    }

    /** The clearest three days in a hundred come within a tenth of FAO-56's clear sky (eq. 37). */
    @Test
    void theClearestDaysReachTheClearSkyOfFao56() {
        List<Double> clearest =
                stations().stream().map(RecordedSunTest::clearest).sorted().toList();
        System.out.println("clearest share of clear sky by station" + ": " + clearest.toString());
        assertThat(clearest.get(clearest.size() / 2)).isBetween(0.93, 1.03);
        // One sensor of 27 is plainly shaded (0.61).
        assertThat(clearest.stream().filter(share -> share < IN_THE_OPEN).count())
                .isLessThanOrEqualTo(clearest.size() / 20);
        assertThat(clearest.get(clearest.size() - 1)).isLessThan(1.1);
    }

    /** Share of clear sky that 97 in 100 days stay below. */
    static double clearest(Path station) {
        double[] clearness = days(station).stream()
                .mapToDouble(d ->
                        d.measuredMjPerM2() / SkyRadiation.clearSkyMjPerM2(d.topMjPerM2(), 200))
                .sorted()
                .toArray();
        return clearness[(int) (0.97 * clearness.length)];
    }
}
