package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.soil.verify.SoilReport;
import rainward.soil.verify.SoilVerification;
import rainward.soil.verify.StationDay;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.TempRange;

/** Half hours put together to days, and what is said of a file that is none. */
class HalfHourFileTest {

    private static final Path BONDVILLE = Path.of("../shared/data/bondville-1998");

    @TempDir
    Path folder;

    /** Two days: 10 C at night, 20 C by day, 200 W/m2 throughout, a tenth of an inch at noon. */
    private static List<List<String>> twoDays() {
        List<List<String>> lines = new ArrayList<>();
        for (int i = 0; i < 96; i++) {
            List<String> cells = new ArrayList<>(Collections.nCopies(33, "-6999"));
            int minutes = 30 * (i % 48 + 1) % 1440;
            cells.set(0, String.valueOf(i / 48 + 1));
            cells.set(1, String.valueOf(minutes / 60 * 100 + minutes % 60));
            cells.set(2, "4");
            cells.set(4, i % 48 < 12 ? "10" : "20");
            cells.set(5, "103");
            cells.set(7, "200");
            cells.set(12, i % 48 == 24 ? "0.1" : "0");
            cells.set(16, "16");
            cells.set(17, "12");
            cells.set(30, "0.31");
            lines.add(cells);
        }
        return lines;
    }

    private StationYear read(List<List<String>> lines) throws IOException {
        Files.write(
                folder.resolve("halfhourly.dat"),
                lines.stream().map(cells -> "  " + String.join("   ", cells)).toList());
        return new StationFolder(folder).stations().get(0);
    }

    @Test
    void halfHoursMakeADay() throws IOException {
        StationYear year = read(twoDays());

        assertThat(year.days()).hasSize(2);
        StationDay day = year.days().get(1);
        assertThat(day.weather().day()).isEqualTo(LocalDate.of(1998, 1, 2));
        assertThat(day.weather().temps()).hasValue(new TempRange(10, 20));
        assertThat(day.weather().rainMm().orElseThrow()).isCloseTo(2.54, within(1e-9));
        assertThat(day.weather().sky().radiationMjPerM2().orElseThrow())
                .isCloseTo(200 * 0.0864, within(1e-9));
        assertThat(day.weather().sky().humidityFraction()).hasValue(1);
        assertThat(day.weather().sky().windMps().orElseThrow()).isCloseTo(2.992, within(1e-9));
        assertThat(day.moisture5Fraction().orElseThrow()).isCloseTo(0.31, within(1e-9));
        assertThat(day.soilTemp5C().orElseThrow()).isCloseTo(15, within(1e-9));
    }

    @Test
    void aDayHardlyMeasuredIsUnknown() throws IOException {
        List<List<String>> lines = twoDays();
        for (int i = 0; i < 9; i++) {
            lines.get(i).set(30, "-6999");
        }
        StationYear year = read(lines);

        assertThat(year.days().get(0).moisture5Fraction()).isEmpty();
        assertThat(year.days().get(1).moisture5Fraction()).isPresent();
    }

    @Test
    void whatIsNotSuchAFileIsToldWithItsLine() {
        List<List<String>> swapped = twoDays();
        Collections.swap(swapped, 4, 5);
        assertThatThrownBy(() -> read(swapped))
                .isInstanceOf(BadTableException.class)
                .hasMessageContaining("halfhourly.dat line 5 is of 300, must be of 230");
        List<List<String>> narrow = twoDays();
        narrow.set(7, List.of("1", "400", "3"));
        assertThatThrownBy(() -> read(narrow))
                .hasMessageContaining("line 8 has 3 columns, must have 33");
        List<List<String>> words = twoDays();
        words.get(2).set(4, "warm");
        assertThatThrownBy(() -> read(words)).hasMessageContaining("line 3 holds something else");
        assertThatThrownBy(() -> read(twoDays().subList(0, 50)))
                .hasMessageContaining("has 50 lines, must have 48 for each of two days or more");
    }

    /**
     * By the day, under one loam and short grass as at any station, the column beats the bucket and
     * what is kept for a week or from the start; yesterday's reading it does not.
     */
    @Test
    void theTestCaseStandsInTheSameTable() {
        assumeTrue(Files.isDirectory(BONDVILLE), "skipped: no measured year at " + BONDVILLE);
        SoilReport.Figures row = SoilVerification.of(new StationFolder(BONDVILLE).stations())
                .stations()
                .get(0);

        assertThat(row.r()).isGreaterThanOrEqualTo(0.8).isGreaterThan(row.bucketR());
        assertThat(row.ubRmse())
                .isLessThan(row.bucketUbRmse())
                .isLessThan(row.told().startPersistenceUbRmse());
        assertThat(row.told().weekUbRmse()).isLessThan(row.persistenceUbRmse());
    }
}
