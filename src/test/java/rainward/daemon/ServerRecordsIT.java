package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.keep.NightDesk;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.store.DatabaseServer;
import rainward.store.OwnPostgres;

/** A data folder whose settings name a PostgreSQL server for the records. */
class ServerRecordsIT {

    private static final Instant MORNING = Instant.parse("2026-07-14T12:30:00Z");

    @TempDir
    Path folder;

    private Path home;
    private Desk desk;

    @BeforeEach
    void settingsNameAServer() throws IOException {
        home = folder.resolve("home");
        DatabaseServer server = OwnPostgres.databaseOf(home);
        desk = new Desk(home, MORNING)
                .withSettings(Desk.crew() + """

                [store]
                url = "%s"
                user = "%s"
                password_file = "store.password"
                """.formatted(server.url(), server.user()));
        Files.writeString(home.resolve("store.password"), server.password());
    }

    @Test
    void commandsWorkOnItAndNoDatabaseFileIsMade() throws IOException {
        assertThat(desk.type("import", "config/demo-fields.geojson"))
                .satisfies(said -> assertThat(said.exitCode()).as(said.err()).isZero());

        Desk.Said noted = desk.type("note", "MP1 Orchard Strip", "gate is locked");
        assertThat(noted.exitCode()).as(noted.err()).isZero();

        Path out = folder.resolve("all");
        Desk.Said exported = desk.type("export", "all", out.toString());
        assertThat(exported.exitCode()).as(exported.err()).isZero();
        assertThat(out.resolve("journal.csv")).content().contains("gate is locked");
        assertThat(home.resolve("rainward.db")).doesNotExist();
    }

    @Test
    void copiesAreTheServersAffairAndTheNightGoesOn() {
        for (String command : new String[] {"backup", "restore"}) {
            Desk.Said said = desk.type(command);
            assertThat(said.exitCode()).isNotZero();
            assertThat(said.err()).contains("let pg_dump run every night").doesNotContain("\tat ");
        }
        try (Office office = Office.open(
                new HomeFolder(home),
                Office.settings(desk.settings(), Map.of()).settings(),
                InstantSource.fixed(MORNING))) {
            new NightDesk(office).workIfDue();
            NightDesk.Night night = office.store().read(NightDesk::last).orElseThrow();
            assertThat(night.well()).isTrue();
            assertThat(night.words()).contains("pg_dump");
        }
    }

    @Test
    void serverThatIsDownIsToldInASentence() throws Exception {
        desk.type("import", "config/demo-fields.geojson");
        OwnPostgres.shut(home);
        try {
            Desk.Said said = desk.type("note", "MP1 Orchard Strip", "gate is locked");
            assertThat(said.exitCode()).isEqualTo(1);
            assertThat(said.err().lines()).hasSize(1);
            assertThat(said.err()).contains("the database server does not answer");
        } finally {
            OwnPostgres.letIn(home);
        }
        assertThat(desk.type("note", "MP1 Orchard Strip", "gate is locked").exitCode())
                .isZero();
    }

    @Test
    void aFolderMovesToTheServerAndBackOnce() throws IOException {
        String withServer = Files.readString(desk.settings());
        desk.withSettings(Desk.crew());
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
        assertThat(desk.type("move-store", "--to", "server"))
                .satisfies(said -> assertThat(said.exitCode()).isEqualTo(2))
                .satisfies(said -> assertThat(said.err()).contains("name no server"));

        desk.withSettings(withServer);
        Desk.Said unknown = desk.type("move-store", "--to", "cellar");
        assertThat(unknown.exitCode()).isEqualTo(2);
        Desk.Said moved = desk.type("move-store", "--to", "server");
        assertThat(moved.exitCode()).as(moved.err()).isZero();
        assertThat(moved.out()).contains("each compared").contains("field");
        assertThat(desk.type("note", "MP1 Orchard Strip", "gate is locked").exitCode())
                .isZero();

        Desk.Said back = desk.type("move-store", "--to", "file");
        assertThat(back.exitCode()).isEqualTo(1);
        assertThat(back.err()).contains("rainward.db: holds records already");
        Files.delete(home.resolve("rainward.db"));
        assertThat(desk.type("move-store", "--to", "file").exitCode()).isZero();
        desk.withSettings(Desk.crew());
        Path out = folder.resolve("back");
        assertThat(desk.type("export", "all", out.toString()).exitCode()).isZero();
        assertThat(out.resolve("journal.csv")).content().contains("gate is locked");
    }
}
