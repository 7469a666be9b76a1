package rainward.daemon.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.settings.text.KeyLines;
import rainward.intake.SharedTables;
import rainward.intake.TableFolder;

/** The annotated example is what people copy: it must be usable, whole and true. */
class ExampleSettingsTest {

    @TempDir
    Path folder;

    @Test
    void exampleIsUsableAsItIs() {
        SettingsOutcome outcome = Crews.reader().read(Crews.EXAMPLE);

        assertThat(outcome).isInstanceOfSatisfying(SettingsOutcome.Usable.class, usable -> {
            assertThat(usable.warnings()).isEmpty();
            assertThat(usable.settings().farm().name()).isEqualTo("Burr Oak Seeding");
            assertThat(usable.settings().work().crew().machines()).hasSize(4);
            assertThat(usable.settings().work().recipes()).hasSize(2);
        });
    }

    @Test
    void exampleTellsEveryKeyThatIsKnown() throws IOException {
        String everything = uncommented(Files.readString(Crews.EXAMPLE));
        List<String> lines = everything.lines().toList();
        KeyLines places = KeyLines.of(lines);
        SortedSet<String> missing = new TreeSet<>(Crews.reader().knownKeys(everything));
        missing.removeIf(key -> entries(key).anyMatch(entry -> {
            String line = lines.get(Math.max(0, places.of(entry) - 1));
            return line.contains(entry.substring(entry.lastIndexOf('.') + 1).replace("[1]", ""));
        }));

        assertThat(missing).isEmpty();
    }

    /** A key of a list may be shown in any of its entries. */
    private static Stream<String> entries(String key) {
        return key.contains("[]")
                ? IntStream.rangeClosed(1, 5)
                        .boxed()
                        .flatMap(i -> entries(key.replaceFirst("\\[]", "[" + i + "]")))
                : Stream.of(key);
    }

    @Test
    void everythingInTheExampleIsKnown() throws IOException {
        String everything = uncommented(Files.readString(Crews.EXAMPLE))
                .replaceAll("(?m)^(key|password|secret)_env.*$", "")
                .replaceAll("(?m)^(webhook|secret_file).*$", "");
        Files.writeString(folder.resolve("open-meteo.key"), "k");
        Files.writeString(folder.resolve("mail.password"), "p");
        Files.writeString(folder.resolve("store.password"), "p");
        Files.writeString(folder.resolve("yard-pc.pem"), "c");
        Files.writeString(folder.resolve("yard-pc.key"), "k");
        Files.copy(
                Path.of("src/test/resources/tls/office-ca.pem"), folder.resolve("office-ca.pem"));
        Path file = Files.writeString(folder.resolve("rainward.toml"), everything);

        assertThat(Crews.faults(file)).isEmpty();
    }

    @Test
    void keyThatNobodyKnowsIsRefusedInEveryTable() throws IOException {
        List<String> lines =
                uncommented(Files.readString(Crews.EXAMPLE)).lines().toList();
        int tables = 0;
        for (int i = 0; i < lines.size(); i++) {
            List<String> more = new ArrayList<>(lines);
            if (lines.get(i).startsWith("[")) {
                more.add(i + 1, "qwertz = 1");
            } else if (lines.get(i).contains("{ ")) {
                more.set(i, lines.get(i).replace("{ ", "{ qwertz = 1, "));
            } else {
                continue;
            }
            Path file = Files.write(folder.resolve("rainward.toml"), more);
            assertThat(Crews.faults(file))
                    .as(lines.get(i))
                    .anyMatch(words -> words.contains("qwertz = 1; there is no such key"));
            tables++;
        }
        assertThat(tables).isGreaterThan(30);
    }

    @Test
    void whatTheExampleCallsUsualIsUsual() throws IOException {
        Path file = Files.writeString(
                folder.resolve("rainward.toml"), usualWritten(Files.readString(Crews.EXAMPLE)));

        assertThat(Crews.usable(file)).isEqualTo(Crews.usable(Crews.EXAMPLE));
    }

    @Test
    void exampleIsOnTheClassPath() throws IOException {
        try (InputStream bundled = getClass().getResourceAsStream("/config/rainward.toml")) {
            assertThat(new String(bundled.readAllBytes(), StandardCharsets.UTF_8))
                    .isEqualTo(Files.readString(Crews.EXAMPLE));
        }
    }

    @Test
    void exampleFitsTheSharedTables() {
        SharedTables tables = new SharedTables(TableFolder.onClassPath());

        assertThat(new SettingsReader(Map.of(), tables.species(), tables.regions())
                        .read(Crews.EXAMPLE))
                .isInstanceOf(SettingsOutcome.Usable.class);
    }

    private static String uncommented(String text) {
        return text.replaceAll("(?m)^#(\\[|[a-z0-9_]+ = )", "$1");
    }

    /**
     * Keys that show what holds without them, written out; tables that may be left out stay out.
     */
    private static String usualWritten(String text) {
        List<String> lines = new ArrayList<>();
        boolean tableIsOut = false;
        for (String line : text.lines().toList()) {
            if (line.startsWith("[")) {
                tableIsOut = false;
            } else if (line.startsWith("#[")) {
                tableIsOut = true;
            }
            boolean usual = line.matches("#[a-z0-9_]+ = .*") && !line.contains("left out");
            lines.add(usual && !tableIsOut ? line.substring(1) : line);
        }
        return String.join("\n", lines);
    }
}
