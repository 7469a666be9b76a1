package rainward.store.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import rainward.farm.Window;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;
import rainward.store.journal.Hollows;
import rainward.store.row.Gzip;
import rainward.store.row.StoreException;
import rainward.weather.rain.RainObservation;
import rainward.weather.source.HostPauses;
import rainward.weather.source.LastGoodCopies;
import rainward.weather.source.RawPull;

/** Weather as it came, kept for the day somebody asks why. */
@EachEngine
class ArchiveIT {

    private static final Instant SIX = Instant.parse("2026-07-15T10:00:00Z");
    private static final String ADDRESS = "http://weather.example/gridpoints/XYZ/1,2";

    @Parameter
    TestEngine engine = TestEngine.SQLITE;

    @TempDir
    Path home;

    private Store store;

    @BeforeEach
    void open() {
        store = engine.open(home);
        store.inTransaction(books -> books.fields().take(Hollows.SURVEY, SIX));
    }

    @AfterEach
    void close() {
        store.close();
    }

    private static RawPull pull(String body, Instant fetchedAt, int status) {
        return new RawPull(
                "nws",
                ADDRESS,
                status,
                Map.of("etag", "\"" + body.hashCode() + "\""),
                body.getBytes(StandardCharsets.UTF_8),
                fetchedAt,
                status == 200 ? Optional.of(fetchedAt.minusSeconds(60)) : Optional.empty());
    }

    private void add(RawPull pull) {
        store.inTransaction(books -> {
            books.forecasts().add(pull);
            return pull;
        });
    }

    private void damage(String sql) throws SQLException {
        try (Connection connection = engine.connect(home);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private String inForce(Instant moment) {
        return store.read(books -> books.forecasts()
                .inForce(ADDRESS, moment)
                .map(pull -> new String(pull.body(), StandardCharsets.UTF_8))
                .orElse("none"));
    }

    @Test
    void answerComesBackAsItCame() {
        RawPull answer = pull("{\"rain\":[0.2,0.4]}", SIX, 200);
        add(answer);

        assertThat(store.<Optional<RawPull>>read(b -> b.forecasts().inForce(ADDRESS, SIX)))
                .get()
                .usingRecursiveComparison()
                .isEqualTo(answer);
    }

    @Test
    void decisionOfAMomentRestsOnTheLastGoodAnswerBeforeIt() {
        add(pull("first", SIX, 200));
        add(pull("second", SIX.plusSeconds(3600), 200));
        add(pull("trouble", SIX.plusSeconds(5400), 503));

        assertThat(inForce(SIX.minusSeconds(1))).isEqualTo("none");
        assertThat(inForce(SIX.plusSeconds(1800))).isEqualTo("first");
        assertThat(inForce(SIX.plusSeconds(7200))).isEqualTo("second");
        assertThat(store.<List<RawPull>>read(
                        b -> b.forecasts().between(SIX, SIX.plusSeconds(7200))))
                .extracting(RawPull::status)
                .containsExactly(200, 200, 503);
    }

    @Test
    void oldAnswersAreLetGo() {
        add(pull("first", SIX, 200));
        add(pull("second", SIX.plusSeconds(3600), 200));

        store.inTransaction(b -> b.forecasts().forgetBefore(SIX.plusSeconds(1)));

        assertThat(inForce(SIX.plusSeconds(1800))).isEqualTo("none");
        assertThat(inForce(SIX.plusSeconds(7200))).isEqualTo("second");
    }

    @Test
    void damagedAnswerIsSaidNotReturned() throws SQLException {
        add(pull("first", SIX, 200));
        try (Connection connection = engine.connect(home);
                PreparedStatement statement =
                        connection.prepareStatement("update forecast_pull set body_gzip = ?")) {
            statement.setBytes(1, new byte[1]);
            statement.executeUpdate();
        }

        assertThatThrownBy(() -> inForce(SIX))
                .isInstanceOf(StoreException.class)
                .hasMessageStartingWith("a stored forecast is damaged on disk;");
    }

    @Test
    void copyIsReplacedWholeAndADamagedOneCountsAsAbsent() throws SQLException {
        byte[] body = "forecast".getBytes(StandardCharsets.UTF_8);
        LastGoodCopies.Copy copy = new LastGoodCopies.Copy(
                ADDRESS,
                Map.of("etag", "\"1\""),
                body,
                Gzip.sha256(body),
                new LastGoodCopies.Times(SIX, SIX));
        store.copies().keep(copy);
        LastGoodCopies.Copy confirmed =
                copy.confirmed(SIX.plusSeconds(60), Map.of("etag", "\"2\""));
        store.copies().keep(confirmed);

        assertThat(store.copies().find(ADDRESS))
                .get()
                .usingRecursiveComparison()
                .isEqualTo(confirmed);
        damage("update last_good_copy set sha256 = 'x'");
        assertThat(store.copies().find(ADDRESS)).isEmpty();
    }

    @Test
    void hostLeftAloneIsRememberedUntilItAnswers() {
        HostPauses.Trouble trouble = new HostPauses.Trouble(
                "weather.example:443", 3, SIX, SIX.plusSeconds(600), "asked too often");
        store.pauses().keep(trouble);
        assertThat(store.pauses().find("weather.example:443")).contains(trouble);

        store.pauses().clear("weather.example:443");
        assertThat(store.pauses().find("weather.example:443")).isEmpty();
    }

    @Test
    void laterGaugeReadingReplacesAnEarlierOneWhenReadButNotOnDisk() {
        RainObservation read = rain(12.7, SIX);
        RainObservation corrected = rain(10.2, SIX.plusSeconds(60));
        assertThat(write(read)).isTrue();
        assertThat(write(corrected)).isTrue();
        assertThat(write(corrected)).isFalse();

        Window day = new Window(SIX.minus(Duration.ofDays(1)), SIX.plus(Duration.ofDays(1)));
        assertThat(store.<List<RainObservation>>read(b -> b.rain().newest("Kettle Hollow", day)))
                .containsExactly(corrected);
        assertThat(store.<List<RainObservation>>read(b -> b.rain().all("Kettle Hollow")))
                .containsExactly(read, corrected);
    }

    private boolean write(RainObservation rain) {
        return store.inTransaction(books -> books.rain().add("Kettle Hollow", rain, "foreman"));
    }

    private static RainObservation rain(double amountMm, Instant at) {
        return new RainObservation(
                new Window(SIX.minus(Duration.ofHours(20)), SIX.minus(Duration.ofHours(1))),
                amountMm,
                "gauge",
                at,
                "foreman");
    }
}
