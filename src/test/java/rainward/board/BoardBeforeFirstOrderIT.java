package rainward.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.board.house.Entry;
import rainward.board.house.FieldFile;
import rainward.board.house.Gauge;
import rainward.board.house.House;
import rainward.board.house.Mark;
import rainward.board.house.Sheet;
import rainward.board.house.Standing;
import rainward.board.house.Supply;
import rainward.board.house.Takes;
import rainward.brief.post.OutboxRow;
import rainward.cycle.sheet.OrderSheet;
import rainward.farm.UnitSystem;
import rainward.input.load.LoadSheet;

/** A board that is opened while the first order is being worked out. */
class BoardBeforeFirstOrderIT {

    /** Knows nothing yet. */
    private static final class EmptyHouse implements House {

        private static final Standing NOTHING = new Standing(
                0,
                new Standing.Farm(
                        "Burr Oak Seeding", ZoneId.of("America/Detroit"), UnitSystem.US_CUSTOMARY),
                Optional.empty(),
                true,
                List.of());

        @Override
        public Instant now() {
            return Instant.parse("2026-07-13T09:00:00Z");
        }

        @Override
        public Standing standing() {
            return NOTHING;
        }

        @Override
        public Optional<FieldFile> file(String field) {
            return Optional.empty();
        }

        @Override
        public Map<String, String> boundaries() {
            return Map.of();
        }

        @Override
        public LoadSheet loads() {
            return new LoadSheet(LocalDate.of(2026, 7, 13), List.of(), List.of(), List.of());
        }

        @Override
        public List<Supply> shed() {
            return List.of();
        }

        @Override
        public Optional<String> settings() {
            return Optional.empty();
        }

        @Override
        public List<Entry.Group> entries() {
            return List.of();
        }

        @Override
        public Optional<Entry> entry(String kind, Optional<String> name) {
            return Optional.empty();
        }

        @Override
        public List<OutboxRow> outbox() {
            return List.of();
        }

        @Override
        public List<Gauge> gauges() {
            return List.of();
        }

        @Override
        public List<String> skill() {
            return List.of();
        }

        @Override
        public List<Mark> health() {
            return List.of();
        }

        @Override
        public List<Sheet> sheets() {
            return List.of(new Sheet("order", "The order.", OrderSheet.class, Optional::empty));
        }

        @Override
        public Optional<String> calendar(Optional<String> person) {
            return Optional.empty();
        }

        @Override
        public List<String> names() {
            return List.of("office");
        }

        @Override
        public void whenChanged(Runnable told) {
            // Nothing ever changes here.
        }
    }

    @TempDir
    Path folder;

    private Board board;

    @BeforeEach
    void open() {
        board = Board.open(
                new EmptyHouse(),
                saying -> new Takes.Taken("refused", "nothing is taken here"),
                new BoardRules(
                        new BoardRules.Place("127.0.0.1", 0, Set.of(), BoardRules.Security.PLAIN),
                        folder,
                        Optional.empty(),
                        Duration.ofHours(1),
                        Optional.empty()));
    }

    @AfterEach
    void close() {
        board.close();
    }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(board.link()).resolve(path))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/ground",
                "/loads",
                "/weather",
                "/season",
                "/post",
                "/me",
                "/metrics",
                "/settings"
            })
    void everyPageIsThere(String path) throws Exception {
        assertThat(get(path).statusCode()).isEqualTo(200);
    }

    @Test
    void programIsToldThatTheOrderIsNotThereYet() throws Exception {
        HttpResponse<String> answer = get("/api/1/order");

        assertThat(answer.statusCode()).isEqualTo(503);
        assertThat(answer.headers().firstValue("Retry-After")).contains("10");
        JsonNode told = new ObjectMapper().readTree(answer.body());
        assertThat(told.path("outcome").asText()).isEqualTo("not yet");
        assertThat(told.path("words").asText()).isEqualTo("The first order is being worked out.");
    }
}
