package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
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
    void folderThatIsNoneIsNamed() {
        Desk.Said said = replay("--data", folder.resolve("none").toString());

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("none is no folder");
    }
}
