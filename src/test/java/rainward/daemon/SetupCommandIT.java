package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;
import rainward.daemon.office.Office;
import rainward.daemon.settings.Settings;

/** The first run: what is asked, and that the file it leaves is one the program can use. */
class SetupCommandIT {

    @TempDir
    Path home;

    private Desk desk() {
        return new Desk(home, InventedWeather.MONDAY);
    }

    private Settings settings() {
        return Office.settings(desk().settings(), Map.of()).settings();
    }

    private Desk.Said typing(String lines, String... words) {
        InputStream before = System.in;
        System.setIn(new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8)));
        try {
            return desk().type(words);
        } finally {
            System.setIn(before);
        }
    }

    @Test
    void fiveAnswersMakeAFileThatWorksAndOnlyItsOwnerReads() throws IOException {
        Desk.Said said = typing("""
                Marsh "Edge" Seeding
                America/Chicago
                metric
                yard@marsh.example
                smtp.marsh.example:465
                open sesame
                """, "setup");

        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(said.out()).doesNotContain("open sesame").contains("rainward check");
        Settings read = settings();
        assertThat(read.farm().name()).isEqualTo("Marsh \"Edge\" Seeding");
        assertThat(read.farm().zone()).hasToString("America/Chicago");
        Settings.MailServer server = read.mail().server().orElseThrow();
        assertThat(server.port()).isEqualTo(465);
        assertThat(server.security()).isEqualTo(Settings.Security.TLS);
        assertThat(server.login().orElseThrow().password().reveal()).isEqualTo("open sesame");
        assertThat(read.mail().recipients()).hasSize(1);
        for (String file : new String[] {"rainward.toml", "mail.password"}) {
            assertThat(PosixFilePermissions.toString(
                            Files.getPosixFilePermissions(home.resolve(file))))
                    .isEqualTo("rw-------");
        }
        assertThat(desk().settings()).content().doesNotContain("open sesame");
    }

    @Test
    void wrongAnswerIsToldWhatWouldBeRightAndAskedAgain() {
        Desk.Said said = typing(
                "Marsh\nAmerica/Detriot\nAmerica/Detroit\nacres\nus\nyard\nyard@marsh.example\nnone\n",
                "setup");

        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(said.out())
                .contains("the nearest is America/Detroit")
                .contains("\"acres\" must be us or metric.")
                .contains("\"yard\" must be an address");
        assertThat(settings().mail().server()).isEmpty();
    }

    @Test
    void optionsAnswerEverythingAndNobodyIsAsked() {
        Desk.Said said = desk().type(
                        "setup",
                        "--name",
                        "Marsh",
                        "--zone",
                        "America/Detroit",
                        "--units",
                        "us",
                        "--mail",
                        "yard@marsh.example",
                        "--server",
                        "localhost:25");

        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(said.out()).doesNotContain("?");
        assertThat(settings().mail().server().orElseThrow().login()).isEmpty();
    }

    @Test
    void nobodyThereAndBadOptionsEndWithWhatToGive() {
        Desk.Said silent = typing("", "setup");
        Desk.Said wrong = typing("", "setup", "--name", "Marsh", "--zone", "Mars/Base");

        assertThat(silent.exitCode()).isEqualTo(2);
        assertThat(silent.err()).contains("give --name and the others");
        assertThat(wrong.exitCode()).isEqualTo(2);
        assertThat(wrong.err()).contains("--zone Mars/Base: must be a zone");
        assertThat(desk().settings()).doesNotExist();
    }

    @Test
    void fileThatIsThereStaysAsItIs() {
        desk().withSettings("# mine\n");

        Desk.Said said = typing("", "setup");

        assertThat(said.exitCode()).isEqualTo(2);
        assertThat(said.err()).contains("is there already and stays as it is");
        assertThat(desk().settings()).hasContent("# mine\n");
    }
}
