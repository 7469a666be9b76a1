package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** Check and outbox, with servers for weather and mail on this machine. */
class CheckCommandsIT {

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private final GreenMail mail =
            new GreenMail(new ServerSetup(0, "localhost", ServerSetup.PROTOCOL_SMTP));

    @BeforeEach
    void start() {
        mail.start();
    }

    @AfterEach
    void stop() {
        mail.stop();
        weather.close();
    }

    private Desk desk(int smtpPort) {
        String crew = Desk.crew()
                .replace("host = \"localhost\"", "host = \"localhost\"\nport = " + smtpPort);
        return new Desk(home, InventedWeather.MONDAY)
                .withSettings(crew
                        + """

                [weather.address]
                nws = "%s"
                acis = "%s"
                met_norway = "%s"
                """.formatted(weather.address(), weather.address(), weather.address()));
    }

    private static JsonNode finding(Desk.Said said, String what) {
        for (JsonNode finding : said.json().path("findings")) {
            if (finding.path("what").asText().equals(what)) {
                return finding;
            }
        }
        throw new AssertionError("nothing is said of " + what + " in " + said.out());
    }

    @Test
    void allIsWellWhereEveryServerAnswersAndNothingIsSent() {
        Desk desk = desk(mail.getSmtp().getPort());
        desk.type("import", "config/demo-fields.geojson");

        Desk.Said said = desk.type("check");

        assertThat(said.out()).contains("All is well.").contains("nothing sent");
        assertThat(said.exitCode()).isZero();
        assertThat(mail.getReceivedMessages()).isEmpty();
    }

    @Test
    void silentMailServerAndMissingFieldsAreNamedWithWhatToDo() {
        int port = mail.getSmtp().getPort();
        mail.stop();

        Desk.Said said = desk(port).type("check", "--json");

        assertThat(said.exitCode()).isEqualTo(1);
        assertThat(said.json().path("ok").asBoolean()).isFalse();
        assertThat(finding(said, "mail").path("words").asText())
                .contains("cannot reach localhost:" + port, "under [mail]");
        assertThat(finding(said, "fields").path("words").asText()).contains("rainward import");
        assertThat(finding(said, "database").path("ok").asBoolean()).isTrue();
    }

    @Test
    void databaseThatIsNoneIsAFindingAndNotTheEnd() throws IOException {
        Desk desk = desk(mail.getSmtp().getPort());
        Files.writeString(
                home.resolve("rainward.db"), "this has never been a database. ".repeat(99));

        Desk.Said said = desk.type("check", "--json");

        assertThat(said.exitCode()).isEqualTo(1);
        assertThat(finding(said, "database").path("ok").asBoolean()).isFalse();
        assertThat(finding(said, "settings").path("ok").asBoolean()).isTrue();
    }

    @Test
    void everyFaultOfBadSettingsIsToldAtOnce() {
        Desk desk = new Desk(home, InventedWeather.MONDAY)
                .withSettings("[farm]\nname = \"X\"\nzone = \"Mars/Base\"\ncolour = \"red\"\n");

        Desk.Said said = desk.type("check");

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("farm.zone", "Mars/Base").contains("farm.colour");
        assertThat(said.err().lines().count()).isGreaterThan(2);
    }

    @Test
    void mailThatWaitsIsListedTriedAgainAndTakenOut() {
        int port = mail.getSmtp().getPort();
        Desk desk = desk(port);
        desk.type("import", "config/demo-fields.geojson");
        mail.stop();
        assertThat(desk.type("outbox").out()).contains("Nothing waits");
        assertThat(desk.type("brief", "--send").exitCode()).isEqualTo(1);

        JsonNode waiting = desk.type("outbox", "--json").json();
        assertThat(waiting).isNotEmpty();
        assertThat(waiting.get(0).path("state").asText()).isEqualTo("waiting");
        String id = waiting.get(0).path("id").asText();

        assertThat(desk.type("outbox", "--drop", id, "--json")
                        .json()
                        .get(0)
                        .path("state")
                        .asText())
                .isEqualTo("dropped");
        assertThat(desk.type("outbox", "--retry", id, "--json")
                        .json()
                        .get(0)
                        .path("state")
                        .asText())
                .isEqualTo("waiting");
        Desk.Said unknown = desk.type("outbox", "--drop", "4711");
        assertThat(unknown.exitCode()).isEqualTo(2);
        assertThat(unknown.err()).contains("no message 4711");
    }
}
