package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** Past seasons run again, typed. */
class ReplayCommandIT {

    @TempDir
    Path folder;

    private Desk.Said replay(String... more) {
        List<String> words = new ArrayList<>(
                List.of("replay", "--traces", "10", "--policy", "NEAREST_NEXT", "--json"));
        words.addAll(List.of(more));
        return Desk.plain(InventedWeather.MONDAY, words.toArray(String[]::new));
    }

    @Test
    void seasonIsComparedByEveryPolicyAndNotRunTwice() throws IOException {
        Desk.Said first = replay("--seasons", "1", "--keep", folder.toString());
        Path kept = folder.resolve("seasons.jsonl");
        Files.writeString(kept, "{\"station\":\"cut o", StandardOpenOption.APPEND);

        Desk.Said again = replay("--seasons", "1", "--keep", folder.toString());

        assertThat(first.err()).contains("season 1 of 1: invented southern michigan 1");
        assertThat(again.err()).isEmpty();
        assertThat(again.json()).isEqualTo(first.json());
        JsonNode said = first.json();
        assertThat(said.path("seasons").asInt()).isEqualTo(1);
        assertThat(said.path("invented").asBoolean()).isTrue();
        assertThat(said.path("policies")).hasSize(3);
        for (JsonNode policy : said.path("policies")) {
            assertThat(policy.path("acresEstablished").asDouble()).isBetween(0.0, 140.0);
            assertThat(policy.path("acresSeeded").asDouble()).isPositive();
            assertThat(policy.path("worthCi95")).hasSize(2);
            assertThat(policy.path("km").asDouble()).isPositive();
        }
        assertThat(said.path("gapClosed").has("vsAsListed")).isTrue();
        assertThat(said.path("gapClosed").has("vsBestHabit")).isTrue();
    }

    @Test
    void reportIsAPageWithPicturesAndTheWorstSeasonDayByDay() throws IOException {
        Path report = folder.resolve("report");

        Desk.Said said =
                replay("--seasons", "1", "--policy", "RAINWARD", "--report", report.toString());

        assertThat(said.exitCode()).isZero();
        assertThat(ImageIO.read(report.resolve("reliability.png").toFile()).getWidth())
                .isEqualTo(640);
        assertThat(report.resolve("seasons.png")).isNotEmptyFile();
        assertThat(Files.readString(report.resolve("index.html")))
                .contains("1 seasons of invented weather")
                .contains("<h2>Day by day: invented southern michigan 1 from 2020-07-06")
                .contains("<td>as listed</td>")
                .contains(" (told ");
    }

    @Test
    void folderThatIsNoneIsNamed() {
        Desk.Said said = replay("--data", folder.resolve("none").toString());

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("none is no folder");
    }
}
