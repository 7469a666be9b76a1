package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;
import rainward.feed.recorded.Loopback;

/** Members of an ensemble, from the service that shows them to the brief. */
class EnsembleIT {

    private static final Path RECORDED = Path.of(
            "../shared/data/open-meteo/ensemble_GEM_GEPS_Whistler_20251214_precip_transcribed.json");
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path home;

    private final InventedWeather official = new InventedWeather();
    private final AtomicInteger asked = new AtomicInteger();
    private HttpServer server;
    private volatile String answer = "";

    @BeforeEach
    void serve() throws IOException {
        server = Loopback.server();
        server.createContext("/v1/ensemble", exchange -> {
            asked.incrementAndGet();
            byte[] body = answer.getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().add("Content-Type", "application/json");
            exchange.sendResponseHeaders(200, body.length);
            exchange.getResponseBody().write(body);
            exchange.close();
        });
        server.start();
    }

    @AfterEach
    void stop() {
        server.stop(0);
        official.close();
    }

    private Desk desk(String more) {
        Desk desk = new Desk(home, InventedWeather.MONDAY)
                .withWeatherFrom(
                        official.address(),
                        "open_meteo = \"http://localhost:" + server.getAddress().getPort() + "\"\n"
                                + more + "\n[order]\nthinking = \"1 s\"\n");
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
        assertThat(desk.type("pull").exitCode()).isZero();
        return desk;
    }

    private static String chosen() {
        return "\n[weather.open_meteo]\nnot_commercial = true\nensemble = \"invented\"\n";
    }

    /** Three members over ten days from midnight: one dry, one wet by day, one wet throughout. */
    private static String threeMembers() {
        ObjectNode root = JSON.createObjectNode();
        root.put("utc_offset_seconds", 0);
        ObjectNode units = root.putObject("hourly_units");
        ObjectNode hourly = root.putObject("hourly");
        for (String name :
                new String[] {"precipitation", "precipitation_member01", "precipitation_member02"
                }) {
            units.put(name, "mm");
            ArrayNode values = hourly.putArray(name);
            for (int h = 0; h < 240; h++) {
                boolean wet = name.endsWith("2") || (name.endsWith("1") && h % 24 < 12);
                values.add(wet ? 0.4 : 0);
            }
        }
        return atMonday(root);
    }

    private static String atMonday(ObjectNode root) {
        ObjectNode hourly = (ObjectNode) root.get("hourly");
        int hours = hourly.path("precipitation").size();
        ArrayNode times = hourly.putArray("time");
        var midnight = InventedWeather.MONDAY.minus(Duration.ofHours(9));
        for (int h = 0; h < hours; h++) {
            times.add(midnight.plus(Duration.ofHours(h)).getEpochSecond());
        }
        return root.toString();
    }

    private static JsonNode members(Desk.Said ready) {
        return ready.json().path("weather").path(0).path("members").path(0);
    }

    @Test
    void membersShapeTheRainAndAreNamedInReadinessAndBrief() {
        answer = threeMembers();
        Desk desk = desk(chosen());

        JsonNode members = members(desk.type("ready", "--json"));

        assertThat(members.path("source").asText()).isEqualTo("open-meteo-ensemble");
        assertThat(members.path("members").asInt()).isEqualTo(3);
        assertThat(members.path("periods").asInt()).isPositive();
        assertThat(desk.type("brief", "--text").out())
                .contains("rain follows the 3 members of open-meteo-ensemble");
    }

    @Test
    void withoutAChosenModelNobodyIsAskedAndTheFieldOfLatentValuesRules() {
        answer = threeMembers();
        Desk desk = desk("");

        assertThat(members(desk.type("ready", "--json")).isMissingNode()).isTrue();
        assertThat(asked).hasValue(0);
    }

    @Test
    void anEnsembleThatCannotBeReadLeavesThePlanToTheOfficialForecast() {
        answer = "Unexpected error while streaming data";
        Desk desk = desk(chosen());

        Desk.Said ready = desk.type("ready", "--json");

        assertThat(ready.exitCode()).isZero();
        assertThat(members(ready).isMissingNode()).isTrue();
        assertThat(ready.json().path("fields").path(0).path("chanceNow").asDouble())
                .isPositive();
    }

    @Test
    void aRecordedEnsembleIsUsedWithAllItsMembers() throws IOException {
        assumeTrue(Files.exists(RECORDED), "the recorded ensemble is not on this machine");
        answer = atMonday((ObjectNode) JSON.readTree(Files.readString(RECORDED)));
        Desk desk = desk(chosen());

        JsonNode members = members(desk.type("ready", "--json"));

        assertThat(members.path("members").asInt()).isEqualTo(20);
        assertThat(members.path("periods").asInt()).isPositive();
    }
}
