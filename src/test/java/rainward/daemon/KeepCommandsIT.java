package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.brief.post.OutboxRow;
import rainward.brief.post.Outgoing;
import rainward.daemon.keep.NightDesk;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.store.Store;
import rainward.weather.source.RawPull;

/** Backups by night and by hand, the way back, and everything in open formats. */
class KeepCommandsIT {

    /** Half past eight in Michigan. */
    private static final Instant MORNING = Instant.parse("2026-07-14T12:30:00Z");

    @TempDir
    Path folder;

    private Path home;
    private Desk desk;

    @BeforeEach
    void twoYearsOfMail() {
        home = folder.resolve("home");
        desk = new Desk(home, MORNING).withSettings(Desk.crew());
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
        try (Store store = Store.open(home)) {
            for (int day : new int[] {500, 300, 0}) {
                Instant at = MORNING.minus(Duration.ofDays(day));
                store.inTransaction(books -> {
                    books.forecasts().add(answer(day, at));
                    return books.outbox().put(letter("brief/" + day, at));
                });
            }
            store.outbox().markSent(1, MORNING.minus(Duration.ofDays(500)), "250 ok");
            store.outbox().markSent(2, MORNING.minus(Duration.ofDays(300)), "250 ok");
        }
    }

    private static RawPull answer(int day, Instant at) {
        return new RawPull(
                "nws",
                "https://weather.example/" + day,
                200,
                Map.of(),
                "{\"place\":\"Mühle\"}".getBytes(StandardCharsets.UTF_8),
                at,
                Optional.of(at));
    }

    private static Outgoing letter(String event, Instant at) {
        return new Outgoing(
                new Outgoing.Key(event, "dell@burroak.example"),
                Outgoing.Channel.MAIL,
                "order, \"first\"",
                "Subject: order\r\n\r\nNorth lot".getBytes(StandardCharsets.UTF_8),
                new Outgoing.Times(at, at, at.plusSeconds(3600)));
    }

    private Office office(Instant now) {
        return Office.open(
                new HomeFolder(home),
                Office.settings(desk.settings(), Map.of()).settings(),
                InstantSource.fixed(now));
    }

    private List<Long> messages() {
        try (Store store = Store.open(home)) {
            return store.<List<OutboxRow>>read(b -> b.outbox().since(Instant.EPOCH)).stream()
                    .map(OutboxRow::id)
                    .toList();
        }
    }

    private NightDesk.Night night(Instant now) {
        try (Office office = office(now)) {
            new NightDesk(office).workIfDue();
            return office.store().read(NightDesk::last).orElseThrow();
        }
    }

    @Test
    void everyNightLeavesACopyAndLetsGoOfWhatIsTooOldOnce() throws IOException {
        NightDesk.Night night = night(MORNING);

        Path copy = home.resolve("backups/rainward-2026-07-14.db");
        assertThat(night.well()).isTrue();
        assertThat(copy).exists();
        assertThat(messages()).containsExactly(2L, 3L);
        try (Office office = office(MORNING)) {
            assertThat(office.store()
                            .<List<RawPull>>read(b ->
                                    b.forecasts().between(Instant.EPOCH, MORNING.plusSeconds(1))))
                    .hasSize(2);
        }

        Files.delete(copy);
        night(MORNING.plus(Duration.ofHours(17)));
        assertThat(copy).as("the night is done").doesNotExist();
        night(MORNING.plus(Duration.ofHours(19)));
        assertThat(home.resolve("backups/rainward-2026-07-15.db")).exists();
    }

    @Test
    void nightThatFailsSaysSinceWhenIsTriedAgainAndLosesNothing() throws IOException {
        Files.writeString(home.resolve("backups"), "a file where the folder belongs");

        NightDesk.Night first = night(MORNING);
        NightDesk.Night second = night(MORNING.plusSeconds(1800));

        assertThat(first.well()).isFalse();
        assertThat(first.words()).contains("backups: is a file");
        assertThat(second.since()).isEqualTo(first.at());
        assertThat(messages()).as("nothing is let go of without a copy").hasSize(3);

        Files.delete(home.resolve("backups"));
        assertThat(night(MORNING.plusSeconds(3600)).well()).isTrue();
    }

    @Test
    void lastBackupComesBackAndWhatWaitedInItIsNotSentAgain() {
        assertThat(desk.type("backup").out()).contains("2026-07-14.db written and looked through");
        desk.type("drop", "N", "--by", "test");
        try (Store store = Store.open(home)) {
            store.inTransaction(books -> books.outbox().put(letter("later", MORNING)));
        }

        assertThat(desk.type("restore").out()).contains("rainward-2026-07-14.db", "restore last");
        Desk.Said said = desk.type("restore", "last");

        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(said.out()).contains("is put back", "1 messages that waited");
        assertThat(messages()).containsExactly(1L, 2L, 3L);
        try (Store store = Store.open(home)) {
            assertThat(store.<List<OutboxRow>>read(b -> b.outbox().in(OutboxRow.State.WAITING)))
                    .isEmpty();
        }
    }

    @Test
    void damagedDatabaseIsAnsweredWithTheLastBackupAndTheWayBack() throws IOException {
        desk.type("backup");
        Files.write(home.resolve("rainward.db"), new byte[9000]);

        Desk.Said said = desk.type("order");

        assertThat(said.exitCode()).isEqualTo(1);
        assertThat(said.err().strip())
                .startsWith(home.resolve("rainward.db") + ": the database is damaged or is not one")
                .contains("The last one is " + home.resolve("backups/rainward-2026-07-14.db"))
                .contains("`rainward restore last`")
                .doesNotContain("Exception");
        assertThat(desk.type("restore", "last").exitCode()).isZero();
        assertThat(messages()).hasSize(3);
    }

    @Test
    void everythingIsHandedOnInFilesThatAnybodyCanRead() throws IOException {
        Path out = folder.resolve("all");

        Desk.Said said = desk.type("export", "all", out.toString());

        assertThat(said.exitCode()).as(said.err()).isZero();
        List<Map<String, String>> mails = csv(out.resolve("outbox.csv"));
        assertThat(mails).hasSize(3);
        assertThat(mails.get(0))
                .containsEntry("subject", "order, \"first\"")
                .containsEntry("created_at", "2025-03-01T12:30:00Z");
        assertThat(out.resolve(mails.get(0).get("content")))
                .hasFileName("1.eml")
                .hasContent("Subject: order\r\n\r\nNorth lot");
        assertThat(out.resolve(csv(out.resolve("forecast_pull.csv")).get(2).get("body_gzip")))
                .hasContent("{\"place\":\"Mühle\"}");
        assertThat(csv(out.resolve("field.csv"))).hasSizeGreaterThan(30);
        assertThat(out.resolve("README.txt")).exists();
        assertThat(out.resolve("moment.part")).doesNotExist();

        Desk.Said again = desk.type("export", "all", out.toString());
        assertThat(again.exitCode()).isEqualTo(2);
        assertThat(again.err()).contains("not an empty folder");
    }

    private static List<Map<String, String>> csv(Path file) throws IOException {
        try (MappingIterator<Map<String, String>> lines = new CsvMapper()
                .readerForMapOf(String.class)
                .with(CsvSchema.emptySchema().withHeader())
                .readValues(file.toFile())) {
            return lines.readAll();
        }
    }
}
