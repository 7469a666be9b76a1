package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.brief.post.FailedTry;
import rainward.brief.post.OutboxRow;
import rainward.brief.post.Outgoing;
import rainward.daemon.demo.InventedWeather;
import rainward.daemon.keep.TroubleDesk;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;

/** What the service says of itself when it is blind or dumb. */
class TroubleDeskIT {

    private static final Instant MONDAY = InventedWeather.MONDAY;

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private Desk desk;

    @BeforeEach
    void fieldsAndForecast() {
        desk = new Desk(home, MONDAY).withWeatherFrom(weather.address(), "");
        desk.type("import", "config/demo-fields.geojson");
        assertThat(desk.type("pull").exitCode()).isZero();
    }

    @AfterEach
    void close() {
        weather.close();
    }

    private List<String> lookAfter(Duration later) {
        try (Office office = open(later)) {
            new TroubleDesk(office, new PostDesk(office)).look();
            return office
                    .store()
                    .<List<OutboxRow>>read(b -> b.outbox().since(Instant.EPOCH))
                    .stream()
                    .map(row -> row.message().key())
                    .filter(key -> key.event().startsWith("trouble/"))
                    .map(key -> key.event() + " " + key.recipient())
                    .toList();
        }
    }

    private Office open(Duration later) {
        return Office.open(
                new HomeFolder(home),
                Office.settings(desk.settings(), Map.of()).settings(),
                InstantSource.fixed(MONDAY.plus(later)));
    }

    @Test
    void serviceThatSeesAndSpeaksSaysNothingOfItself() {
        assertThat(lookAfter(Duration.ofMinutes(20))).isEmpty();
    }

    @Test
    void ownerIsToldOnceADayThatNoForecastComes() {
        assertThat(lookAfter(Duration.ofHours(14))).as("patience").isEmpty();
        List<String> first = lookAfter(Duration.ofHours(15));
        assertThat(first).hasSize(1).first().asString().startsWith("trouble/forecast/2026-07-1");
        assertThat(lookAfter(Duration.ofMinutes(15 * 60 + 10))).isEqualTo(first);
        assertThat(lookAfter(Duration.ofHours(40))).hasSizeGreaterThan(1);
        try (Office office = open(Duration.ofHours(40))) {
            Optional<Instant> since =
                    office.store().read(books -> TroubleDesk.since(books, "forecast"));
            assertThat(since).contains(MONDAY.plus(Duration.ofHours(14)));
        }
    }

    @Test
    void whatIsMendedIsForgotten() {
        lookAfter(Duration.ofHours(14));
        lookAfter(Duration.ofMinutes(1));
        try (Office office = open(Duration.ofHours(1))) {
            Optional<Instant> since =
                    office.store().read(books -> TroubleDesk.since(books, "forecast"));
            assertThat(since).isEmpty();
        }
    }

    @Test
    void mailThatIsRefusedIsToldOfToo() {
        try (Office office = open(Duration.ZERO)) {
            office.store()
                    .inTransaction(books -> books.outbox()
                            .put(new Outgoing(
                                    new Outgoing.Key("brief/x", "marnie@burroak.example"),
                                    Outgoing.Channel.MAIL,
                                    "order",
                                    "x".getBytes(StandardCharsets.UTF_8),
                                    new Outgoing.Times(MONDAY, MONDAY, MONDAY.plusSeconds(60)))));
            long id = office.store()
                    .<List<OutboxRow>>read(b -> b.outbox().in(OutboxRow.State.WAITING))
                    .get(0)
                    .id();
            office.store().outbox().markFailed(id, FailedTry.refused(MONDAY, "550 no such user"));
        }
        lookAfter(Duration.ofMinutes(5));

        assertThat(lookAfter(Duration.ofMinutes(70)))
                .hasSize(1)
                .first()
                .asString()
                .startsWith("trouble/mail/");
    }
}
