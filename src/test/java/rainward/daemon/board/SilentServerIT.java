package rainward.daemon.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.board.house.Mark;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.store.DatabaseServer;
import rainward.store.OwnPostgres;

/** What the page tells of the service while the server of its records does not answer. */
class SilentServerIT {

    @TempDir
    Path home;

    private Office office() throws Exception {
        DatabaseServer server = OwnPostgres.databaseOf(home);
        Path settings = Files.writeString(
                home.resolve("rainward.toml"),
                Files.readString(Path.of("config", "demo.toml"))
                        + "\n[store]\nurl = \"%s\"\nuser = \"%s\"\n"
                                .formatted(server.url(), server.user()));
        return Office.open(
                new HomeFolder(home),
                Office.settings(settings, Map.of()).settings(),
                InstantSource.system());
    }

    @Test
    void healthTellsItAndSinceWhenAndForgetsItOnceItAnswers() throws Exception {
        try (Office office = office()) {
            var standings = new Standings(office, new PostDesk(office));
            BoardHouse house = new BoardHouse(office, standings, List.of());
            assertThat(house.health()).extracting(Mark::what).contains("order", "forecast");

            OwnPostgres.shut(home);
            assertThat(house.health()).singleElement().satisfies(mark -> {
                assertThat(mark.what()).isEqualTo("database");
                assertThat(mark.well()).isFalse();
                assertThat(mark.words())
                        .contains("the database server does not answer")
                        .contains(" Silent since ");
            });

            OwnPostgres.letIn(home);
            // Connections of before may be handed out once more each.
            await().atMost(Duration.ofSeconds(30))
                    .untilAsserted(() -> assertThat(house.health())
                            .extracting(Mark::what)
                            .contains("order", "forecast"));
        }
    }
}
