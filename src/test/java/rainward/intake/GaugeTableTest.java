package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.Window;

class GaugeTableTest {

    private static final GaugeTable TABLE = new GaugeTable(
            List.of("Kettle", "Marl Pit"),
            ZoneId.of("America/Detroit"),
            Instant.parse("2026-11-20T12:00:00Z"));

    @TempDir
    Path folder;

    private Intake<List<GaugeTable.Reading>> read(String... lines) throws IOException {
        return TABLE.read(Files.writeString(folder.resolve("rain.csv"), String.join("\n", lines)));
    }

    @Test
    void inchesAndMillimetresAreTheSameRain() throws IOException {
        GaugeTable.Reading us = Known.accepted(
                        read("property,read,rain_in", "Kettle,2026-07-14,0.5"))
                .get(0);
        GaugeTable.Reading metric = Known.accepted(
                        read("property,read,rain_mm", "Kettle,2026-07-14,12.7"))
                .get(0);

        assertThat(us.rain().amountMm()).isCloseTo(metric.rain().amountMm(), within(1e-9));
        assertThat(us.rain().window())
                .isEqualTo(new Window(
                        Instant.parse("2026-07-13T11:00:00Z"),
                        Instant.parse("2026-07-14T11:00:00Z")));
    }

    @Test
    void dayBeforeTheMorningClocksGoBackHasTwentyFiveHours() throws IOException {
        GaugeTable.Reading reading = Known.accepted(
                        read("property,read,rain_in", "Kettle,2026-11-01,0.5"))
                .get(0);

        assertThat(reading.rain().window().length()).isEqualTo(Duration.ofHours(25));
    }

    @Test
    void storyOfAGaugeThatWasNotEmptiedForDays() throws IOException {
        GaugeTable.Reading reading = Known.accepted(read(
                        "property,since,read,rain_in",
                        "Marl Pit,2026-07-10 07:00,2026-07-14 18:30,1.2"))
                .get(0);

        assertThat(reading.property()).isEqualTo("Marl Pit");
        assertThat(reading.rain().window().length()).isEqualTo(Duration.ofMinutes(6450));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Ketle,2026-07-14,0.5|property \"Ketle\" is not known; the nearest is \"Kettle\".",
                "Kettle,14 July,0.5|read = \"14 July\"; must be a date, 2026-07-14, or a date and"
                        + " time, 2026-07-14 06:30.",
                "Kettle,2026-07-14,-1|rain_in = \"-1\"; must be a number from 0 to 19.",
                "Kettle,2026-07-14,NaN|rain_in = \"NaN\"; must be a number from 0 to 19.",
                "Kettle,2026-07-14,Infinity|rain_in = \"Infinity\"; must be a number from 0 to 19.",
                "Kettle,2026-07-14,19.1|rain_in = \"19.1\"; must be a number from 0 to 19.",
                "Kettle,2026-07-14,x|rain_in = \"x\"; must be a number from 0 to 19.",
                "Kettle,2026-02-30,1|read = \"2026-02-30\"; must be a date, 2026-07-14, or a date and"
                        + " time, 2026-07-14 06:30.",
                "Kettle,2026-07-14,|rain_in is missing; give either rain_in or rain_mm.",
                "Kettle,2027-07-14,1|read = \"2027-07-14\"; must not be still to come.",
            })
    void badReadingIsToldWithItsLine(String line, String sentence) throws IOException {
        assertThat(Known.faults(read("property,read,rain_in", line)))
                .containsExactly(folder.resolve("rain.csv") + " line 2: " + sentence);
    }

    @Test
    void emptyingAfterTheReadingIsRefused() throws IOException {
        assertThat(Known.faults(
                        read("property,since,read,rain_in", "Kettle,2026-07-15,2026-07-14,0.5")))
                .containsExactly(folder.resolve("rain.csv")
                        + " line 2: since = \"2026-07-15\"; must come before read.");
    }
}
