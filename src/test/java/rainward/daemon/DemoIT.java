package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The first morning of the demo, through the real client, the real store and the real outbox. */
class DemoIT {

    @TempDir
    Path folder;

    @Test
    void theFirstMorningLaysDownOneBriefForEachReaderOfBriefs() throws Exception {
        Path home = folder.resolve("demo");

        Said demo = run("demo", "--once", "--home", home.toString());

        assertThat(demo.exitCode).isZero();
        assertThat(demo.out).contains("36 fields on 6 properties").contains("BRIEF  Mon, Jul 13");
        Path mails = home.resolve("demo-mail");
        assertThat(mails.toFile().list())
                .containsExactlyInAnyOrder(
                        "brief-2026-07-13-dell.eml", "brief-2026-07-13-marnie.eml");
        MimeMessage mail = read(mails.resolve("brief-2026-07-13-dell.eml"));
        assertThat(mail.getSubject()).startsWith("Mon, Jul 13");
        assertThat(mail.getContent()).isInstanceOf(MimeMultipart.class);
    }

    @Test
    void aFolderThatNoDemoMadeIsLeftAlone() throws Exception {
        Files.writeString(folder.resolve("letter.txt"), "mine");

        Said demo = run("demo", "--once", "--home", folder.toString());

        assertThat(demo.exitCode).isEqualTo(2);
        assertThat(demo.err).contains("holds something that no demo made");
        assertThat(folder.resolve("letter.txt")).hasContent("mine");
    }

    @Test
    void withoutAForecastTheOrderSaysWhatToDoAndReadinessNamesTheGate() throws Exception {
        String home = folder.resolve("home").toString();
        String settings = Path.of("config", "rainward.toml").toString();
        run("import", "config/demo-fields.geojson", "--home", home, "--config", settings);

        Said order = run("order", "--home", home, "--config", settings);
        Said ready = run("ready", "--json", "--home", home, "--config", settings);

        assertThat(order.out).contains("without a forecast: run `rainward pull` first");
        JsonNode sheets = new ObjectMapper().readTree(ready.out).path("fields");
        assertThat(sheets).hasSize(36);
        assertThat(sheets.get(0).path("gates").get(0).asText()).contains("no forecast");
    }

    @Test
    void aFieldNamedWrongIsAnsweredWithTheNearestOne() {
        String home = folder.resolve("home").toString();
        String settings = Path.of("config", "rainward.toml").toString();
        run("import", "config/demo-fields.geojson", "--home", home, "--config", settings);

        Said done = run("done", "MP2 Long Pont", "till", "--home", home, "--config", settings);

        assertThat(done.exitCode).isEqualTo(2);
        assertThat(done.err).contains("did you mean 'MP2 Long Pond'?");
    }

    /** What a command said. */
    private record Said(int exitCode, String out, String err) {}

    private static Said run(String... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exitCode = Main.commandLine()
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(words);
        return new Said(exitCode, out.toString(), err.toString());
    }

    private static MimeMessage read(Path file) throws Exception {
        try (InputStream in = Files.newInputStream(file)) {
            return new MimeMessage(Session.getInstance(new Properties()), in);
        }
    }
}
