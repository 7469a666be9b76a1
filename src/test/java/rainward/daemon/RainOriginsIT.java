package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** Where each day's rain came from, as {@code ready --json} tells it. */
class RainOriginsIT {

    private static final String PROPERTY = "Mill Pond";

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private Desk desk = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void pullTheWeather() {
        desk = new Desk(home, InventedWeather.MONDAY).withWeatherFrom(weather.address(), """

                [order]
                thinking = "1 s"
                """);
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
        assertThat(desk.type("pull").exitCode()).isZero();
    }

    @AfterEach
    void stop() {
        weather.close();
    }

    private JsonNode days() {
        for (JsonNode property : desk.type("ready", "--json").json().path("weather")) {
            if (property.path("property").asText().equals(PROPERTY)) {
                return property.path("past");
            }
        }
        throw new AssertionError("no weather of " + PROPERTY);
    }

    private static JsonNode on(JsonNode days, String day) {
        for (JsonNode one : days) {
            if (one.path("day").asText().equals(day)) {
                return one;
            }
        }
        throw new AssertionError("no rain of " + day);
    }

    @Test
    void sixtyDaysAreListedAndTheGaugeOutranksTheAnalysisForItsDayAlone() {
        JsonNode before = days();
        assertThat(before).hasSize(60);
        assertThat(on(before, "2026-07-10").path("origin").asText()).isEqualTo("daily analysis");

        assertThat(desk.type(
                                "rain",
                                PROPERTY,
                                "0.42in",
                                "--at",
                                "2026-07-11 00:00",
                                "--by",
                                "Marnie")
                        .exitCode())
                .isZero();

        JsonNode gauged = on(days(), "2026-07-10");
        assertThat(gauged.path("origin").asText()).isEqualTo("gauge");
        assertThat(gauged.path("rainMm").asDouble()).isCloseTo(10.67, within(0.011));
        assertThat(gauged.path("from")).hasSize(1);
        assertThat(gauged.path("from").path(0).path("by").asText()).isEqualTo("Marnie");
        assertThat(gauged.path("from").path(0).path("toldAt").asText()).startsWith("2026-07-13");
        assertThat(on(days(), "2026-07-08").path("origin").asText()).isEqualTo("daily analysis");
    }
}
