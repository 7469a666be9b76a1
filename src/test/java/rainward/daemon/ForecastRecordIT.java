package rainward.daemon;

import static com.github.tomakehurst.wiremock.client.WireMock.get;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathMatching;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.feed.Sky;
import rainward.feed.recorded.ArchivedForecasts;
import rainward.store.Store;
import rainward.weather.rain.RainObservation;
import rainward.weather.skill.SaidChance;
import rainward.weather.source.RawPull;

/** What forecasts said is in the record, whoever asked for them and however long ago. */
class ForecastRecordIT {

    private static final Instant START = Instant.parse("2026-07-13T00:00:00Z");
    private static final Instant LATER = START.plus(Duration.ofDays(8));
    private static final Window WEEK = new Window(START, LATER);
    private static final String PROPERTY = "Mill Pond";

    @TempDir
    Path home;

    private Desk demo() {
        Desk desk = new Desk(home, LATER).withSettings(Desk.crew());
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
        return desk;
    }

    /** Four forecasts of the demo, as an earlier version left them: answers, and no chances. */
    private void archive(String place) {
        try (Store store = Store.open(home)) {
            store.inTransaction(books -> {
                for (int day = 13; day < 17; day++) {
                    Instant issued = Instant.parse("2026-07-" + day + "T07:40:00Z");
                    books.forecasts()
                            .add(new RawPull(
                                    "nws",
                                    "http://forecast.invalid/gridpoints/RWD/41,33",
                                    200,
                                    Map.of(),
                                    body("nws-" + place + "-202607" + day + "T0740Z.json"),
                                    issued.plus(Duration.ofMinutes(20)),
                                    Optional.of(issued)));
                }
                return place;
            });
        }
    }

    private static byte[] body(String file) {
        try {
            return Files.readAllBytes(Path.of("demo-forecasts", file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void letItRain() {
        try (Store store = Store.open(home)) {
            store.inTransaction(books -> {
                for (int h = 0; h < 24 * 8; h++) {
                    Instant at = START.plus(Duration.ofHours(h));
                    var hour = new Window(at, at.plus(Duration.ofHours(1)));
                    books.rain()
                            .add(
                                    PROPERTY,
                                    new RainObservation(hour, h % 30 == 0 ? 2 : 0, "stage4", LATER),
                                    "stage4");
                }
                return PROPERTY;
            });
        }
    }

    private List<SaidChance> said(String property) {
        try (Store store = Store.open(home)) {
            return store.read(books -> books.chances().of(property, WEEK));
        }
    }

    private static int cases(JsonNode sheet) {
        int cases = 0;
        for (JsonNode lead : sheet.path("farm")) {
            cases += lead.path("score").path("cases").asInt();
        }
        return cases;
    }

    @Test
    void answersKeptBeforeTheRecordBeganCount() {
        Desk desk = demo();
        archive("mill-pond");
        letItRain();

        int cases = cases(desk.type("skill", "--json").json());

        assertThat(cases).isGreaterThan(30);
        assertThat(said("Kettle Lake")).as("another cell").isEmpty();
        List<SaidChance> record = said(PROPERTY);
        assertThat(cases(desk.type("skill", "--json").json())).as("once").isEqualTo(cases);
        assertThat(said(PROPERTY)).isEqualTo(record);
    }

    /** The order in which forecasts come into the record decides nothing. */
    @Test
    void theArchiveGivesTheRecordThatThePullsWouldHaveGiven() {
        Desk desk = demo();
        archive("mill-pond");
        desk.type("skill");
        List<SaidChance> fromTheArchive = said(PROPERTY);

        try (Store store = Store.open(home)) {
            store.inTransaction(books -> {
                books.forecasts().newestOf(List.of("nws"), Long.MAX_VALUE, 10).values().stream()
                        .sorted(Comparator.comparing(RawPull::fetchedAt))
                        .forEach(pull -> ArchivedForecasts.of(pull)
                                .at(new GeoPoint(42.071, -84.655))
                                .ifPresent(s -> books.chances().add("in order", SaidChance.of(s))));
                return PROPERTY;
            });
        }
        assertThat(fromTheArchive).isNotEmpty().isEqualTo(said("in order"));
    }

    @Test
    void propertiesInOneCellShareOneQuestionAndEachHasARecord() throws IOException {
        try (Sky sky = new Sky()) {
            sky.server.stubFor(get(urlPathMatching("/points/.*"))
                    .willReturn(Sky.json(Sky.fixture("nws-point.json"))));
            sky.on(Sky.GRID, Sky.json(Sky.fixture("nws-grid.json")));
            Desk desk = new Desk(home, Sky.NOW)
                    .withSettings(Desk.crew().replace("[\"acis\"]", "[]")
                            + """

                            [weather.address]
                            nws = "%s"
                            """.formatted(sky.server.baseUrl()));
            Path fields = home.resolve("neighbours.geojson");
            Files.writeString(fields, neighbours(), StandardCharsets.UTF_8);
            Desk.Said taken = desk.type("import", fields.toString());
            assertThat(taken.exitCode()).as(taken.err()).isZero();

            assertThat(desk.type("pull", "--json").json()).hasSize(2);

            assertThat(sky.asked(Sky.GRID)).isEqualTo(1);
            Instant evening = Sky.NOW.plus(Duration.ofHours(12));
            sky.on(
                    Sky.GRID,
                    Sky.json(Sky.fixture("nws-grid.json")
                            .replace("2026-07-15T09:12:00", "2026-07-15T21:12:00")));
            desk.at(evening).type("pull");

            assertThat(sky.asked(Sky.GRID)).isEqualTo(2);
            List<SaidChance> west = ahead("West");
            assertThat(west).anyMatch(said -> said.issuedAt().isAfter(Sky.NOW));
            assertThat(ahead("East")).isEqualTo(west);
        }
    }

    private List<SaidChance> ahead(String property) {
        Window ahead = new Window(Sky.NOW, Sky.NOW.plus(Duration.ofDays(8)));
        try (Store store = Store.open(home)) {
            return store.read(books -> books.chances().of(property, ahead));
        }
    }

    private static String neighbours() throws IOException {
        return Files.readString(Path.of("src/test/resources/feed/two-fields.geojson"))
                .replaceFirst("\"property\": \"Mill Pond\"", "\"property\": \"West\"")
                .replace("\"property\": \"Mill Pond\"", "\"property\": \"East\"")
                .replace("\"gate\": \"Mill Pond\"", "\"gate\": \"West\"");
    }
}
