package rainward.weather.past;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.StormBlock;

/**
 * Assumptions about storms beside half-hourly rain at Bondville, Illinois, April to October 1998
 * (NOAA land-surface test case). Nothing is fitted to it; bounds are wide, since it is one station
 * and one year.
 */
class BondvilleRainTest {

    static final Path FILE = Path.of("../shared/data/bondville-1998/halfhourly.dat");
    static double[] halfHourMm = {};

    @BeforeAll
    static void read() throws IOException {
        assumeTrue(Files.exists(FILE), "no " + FILE + ": recorded weather is not on this machine");
        try (var lines = Files.lines(FILE)) {
            halfHourMm = lines.map(line -> line.trim().split("\\s+"))
                    .filter(row -> inSeason(Double.parseDouble(row[0])))
                    .mapToDouble(row -> Math.max(0, Double.parseDouble(row[12])) * 25.4)
                    .toArray();
        }
    }

    private static boolean inSeason(double dayOfYear) {
        return dayOfYear >= 91 && dayOfYear < 305;
    }

    static double[] hours() {
        return IntStream.range(0, halfHourMm.length / 2)
                .mapToDouble(h -> halfHourMm[2 * h] + halfHourMm[2 * h + 1])
                .toArray();
    }

    static List<double[]> wetBlocks(int length) {
        double[] hours = hours();
        return IntStream.range(0, hours.length / length)
                .mapToObj(i -> Arrays.copyOfRange(hours, i * length, (i + 1) * length))
                .filter(block -> Arrays.stream(block).sum() >= RainAmount.MEASURABLE_MM)
                .toList();
    }

    static double wetFraction(int length) {
        return wetBlocks(length).size() / (hours().length / (double) length);
    }

    static double storm(java.util.function.ToDoubleFunction<double[]> measure) {
        return wetBlocks(6).stream().mapToDouble(measure).average().orElseThrow();
    }

    private static double peakShare(double[] block) {
        return Arrays.stream(block).max().orElseThrow() / Arrays.stream(block).sum();
    }

    @Test
    void aWetQuarterDayRainsAboutAsLongAndAsPeakedAsAssumed() {
        double hours = storm(b -> Arrays.stream(b).filter(mm -> mm >= 0.1).count());
        double peak = storm(BondvilleRainTest::peakShare);
        double[][] assumed = IntStream.range(0, 600)
                .mapToObj(i -> StormBlock.of(StormBlock.hours(i / 600.0, 6)))
                .toArray(double[][]::new);
        double assumedHours =
                Arrays.stream(assumed).mapToInt(s -> s.length).average().orElse(0);
        double assumedPeak = Arrays.stream(assumed)
                .mapToDouble(BondvilleRainTest::peakShare)
                .average()
                .orElse(0);
        System.out.println(
                "wet hours in a wet 6 h, seen and assumed" + ": " + hours + " " + assumedHours);
        System.out.println(
                "share of the wettest hour, seen and assumed" + ": " + peak + " " + assumedPeak);
        assertThat(assumedHours / hours).isBetween(0.75, 1.33);
        assertThat(assumedPeak / peak).isBetween(0.75, 1.33);
    }

    @Test
    void shorterPeriodsAreWetAboutAsOftenAsSpellsOfFourHoursSay() {
        var month = new MonthlyClimate(java.time.Month.JULY, wetFraction(24), 8, 15, 28);
        for (int length : new int[] {1, 6, 12}) {
            double ratio = month.wetChance(length) / wetFraction(length);
            System.out.println(
                    "wet share of " + length + " h, reckoned over seen" + ": " + "" + ratio);
            assertThat(ratio).isBetween(0.75, 1.33);
        }
    }

    /** Yin et al. 2007 found 1.668 over 456 storms in China. */
    @Test
    void halfHoursPeakOverHeavyHoursAboutAsPublished() {
        double[] hours = hours();
        double peak = 0;
        double mean = 0;
        for (int h = 0; h < hours.length; h++) {
            if (hours[h] >= 5) {
                peak += 2 * Math.max(halfHourMm[2 * h], halfHourMm[2 * h + 1]);
                mean += hours[h];
            }
        }
        System.out.println("30-minute peak over the hour" + ": " + "" + peak / mean);
        assertThat(peak / mean).isBetween(1.668 * 0.8, 1.668 * 1.2);
    }
}
