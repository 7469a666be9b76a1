package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** The command that measures soil and stand; what it measures is no matter of a test. */
class BenchPhysicsTest {

    private final StringWriter said = new StringWriter();

    private int run(String... args) {
        return Main.commandLine()
                .setOut(new PrintWriter(said))
                .setErr(new PrintWriter(said))
                .execute(args);
    }

    @Test
    void theCostOfAFieldIsToldForEachNumberOfFields() throws IOException {
        assertThat(run("bench", "physics", "--most", "2", "--json")).isZero();

        JsonNode told = new ObjectMapper().readTree(said.toString());
        assertThat(told.get("physicsMsPerField").asDouble()).isPositive();
        assertThat(told.get("tracesMs").asDouble()).isPositive();
        assertThat(told.get("byFields")).hasSize(1);
        assertThat(told.get("byFields").get(0).get("fields").asInt()).isEqualTo(2);
    }

    @Test
    void theCostOfTracesIsToldForBothKindsOfChances() throws IOException {
        assertThat(run("bench", "traces", "--json")).isZero();

        JsonNode told = new ObjectMapper().readTree(said.toString());
        assertThat(told.get("tracesMs").asDouble() * 1e6)
                .isCloseTo(told.get("nsPerValue").asDouble() * 200 * 240 * 36, within(1.0));
        assertThat(told.get("sixHoursMs").asDouble()).isPositive();
    }

    @Test
    void noFieldAtAllIsRefused() {
        assertThat(run("bench", "physics", "--most", "0")).isEqualTo(2);
        assertThat(said.toString()).contains("--most is 0, must be 1 or more.");
    }
}
