package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/** The command that measures a round; how long one takes is no matter of a test. */
class BenchCycleIT {

    private final StringWriter said = new StringWriter();

    private int run(String... args) {
        return Main.commandLine()
                .setOut(new PrintWriter(said))
                .setErr(new PrintWriter(said))
                .execute(args);
    }

    @Test
    void everyPartOfARoundIsToldWithItsShare() throws IOException {
        assertThat(run("bench", "cycle", "--runs", "1", "--json", "--here")).isZero();

        JsonNode told = new ObjectMapper().readTree(said.toString());
        JsonNode parts = told.get("parts");
        assertThat(parts.findValuesAsText("name"))
                .containsExactly(
                        "records",
                        "traces",
                        "soil",
                        "stand",
                        "plan",
                        "windows",
                        "readiness",
                        "store");
        assertThat(parts).allMatch(part -> part.get("ms").asDouble() > 0);
        double sumMs = StreamSupport.stream(parts.spliterator(), false)
                .mapToDouble(part -> part.get("ms").asDouble())
                .sum();
        assertThat(told.get("cycleMs").get("f36").asDouble()).isCloseTo(sumMs, within(0.01));
    }

    @Test
    void noRoundAtAllIsRefused() {
        assertThat(run("bench", "cycle", "--runs", "0")).isEqualTo(2);
        assertThat(said.toString()).contains("--runs is 0, must be 1 or more.");
    }
}
