package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** Commands that print figures and need no data folder. */
class FigureCommandsIT {

    private static final Path SHARED = Path.of("..", "shared", "data");

    @TempDir
    Path folder;

    private static Desk.Said type(String... words) {
        return Desk.plain(InventedWeather.MONDAY, words);
    }

    /** 43,560 square feet an acre (NIST SP 811, appendix B): 1/20 acre at 15 ft is 145.2 ft. */
    @Test
    void twentiethOfAnAcreAtFifteenFeetIsAHundredFortyFiveFeet() {
        JsonNode said = type("seeder", "catch", "--width", "15ft", "--fraction", "1/20", "--json")
                .json();

        assertThat(said.path("distanceFt").asDouble()).isCloseTo(145.2, within(0.01));
    }

    /** 4046.86 m2 an acre: 1/50 acre at 4 m is 20.23 m. */
    @Test
    void metricAskGivesMetres() {
        JsonNode said = type(
                        "seeder",
                        "catch",
                        "--width",
                        "4 m",
                        "--fraction",
                        "1/50",
                        "--rate",
                        "100 kg/ha",
                        "--json")
                .json();

        assertThat(said.path("distanceM").asDouble()).isCloseTo(20.23, within(0.01));
        assertThat(said.path("catchKg").asDouble()).isCloseTo(0.809, within(0.001));
        assertThat(said.has("distanceFt")).isFalse();
    }

    @Test
    void seederAskThatMakesNoSenseIsRefused() {
        Desk.Said width = type("seeder", "catch", "--width", "wide");
        Desk.Said fraction = type("seeder", "catch", "--width", "15ft", "--fraction", "0.05");

        assertThat(width.exitCode()).isEqualTo(2);
        assertThat(width.err()).contains("--width is 'wide'", "ft or m");
        assertThat(fraction.exitCode()).isEqualTo(2);
        assertThat(fraction.err()).contains("--fraction", "1/20");
    }

    @Test
    void folderWithoutDataIsNamed() {
        Desk.Said feed = type("verify", "feed", "--data", folder.toString());
        Desk.Said soil = type("verify", "soil", "--data", folder.resolve("none").toString());

        assertThat(feed.exitCode()).isEqualTo(2);
        assertThat(feed.err()).contains("holds no recorded answer");
        assertThat(soil.exitCode()).isEqualTo(2);
        assertThat(soil.err()).contains("is no folder");
    }

    @Test
    void recordedAnswersComeOutAsExpected() {
        assumeTrue(Files.isDirectory(SHARED), "the folder of real recordings is not here");

        Desk.Said said = type("verify", "feed", "--data", SHARED.toString(), "--json");

        assertThat(said.json().path("responses").asInt()).isGreaterThan(40);
        assertThat(said.json().path("asExpected")).isEqualTo(said.json().path("responses"));
        assertThat(said.exitCode()).isZero();
    }

    @Test
    void soilFiguresHaveTheNamesThatOthersRead() throws Exception {
        Path stations = SHARED.resolve("uscrn-2020");
        assumeTrue(Files.isDirectory(stations), "the folder of real stations is not here");
        try (var files = Files.list(stations)) {
            Path one = files.filter(f -> f.toString().endsWith(".csv"))
                    .sorted()
                    .findFirst()
                    .orElseThrow();
            Files.copy(one, folder.resolve(one.getFileName()));
        }

        JsonNode said =
                type("verify", "soil", "--data", folder.toString(), "--json").json();

        assertThat(said.path("stations").get(0).fieldNames())
                .toIterable()
                .contains(
                        "station",
                        "days",
                        "r",
                        "ubRmse",
                        "bias",
                        "bucketR",
                        "bucketUbRmse",
                        "persistenceUbRmse",
                        "soilTempRmseC");
        assertThat(said.path("wetting").has("measuredShare")).isTrue();
        assertThat(said.path("median").path("r").asDouble()).isBetween(-1.0, 1.0);
    }

    @Test
    void serviceThatCannotStartIsToldInItsOwnWords() {
        Desk.Said said = type("bench", "service", "--runs", "1", "--config", "no/such.toml");

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("did not get ready", "such.toml", "is not there");
    }
}
