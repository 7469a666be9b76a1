package rainward.daemon.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each file in {@code settings/faulty} is named by its fault and ends with the sentences,
 * {@code #!}, that a person is to read about it.
 */
class FaultySettingsTest {

    private static final Path FOLDER = Path.of("src/test/resources/settings/faulty");

    static Stream<Path> faulty() throws IOException {
        return Files.list(FOLDER).sorted();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("faulty")
    void everyFaultIsToldWithItsLineAndWhatWouldBeRight(Path file) throws IOException {
        List<String> expected = Files.readAllLines(file).stream()
                .filter(line -> line.startsWith("#! "))
                .map(line -> file + ":" + line.substring(3))
                .toList();

        List<String> told = Crews.faults(file);

        assertThat(expected).isNotEmpty();
        assertThat(told).hasSameSizeAs(expected);
        for (int i = 0; i < told.size(); i++) {
            assertThat(told.get(i)).startsWith(expected.get(i));
        }
    }

    @Test
    void allFaultsOfAFileAreToldAtOnceInItsOrder(@TempDir Path folder) throws IOException {
        String text = Files.readString(Crews.USABLE)
                .replace("\"us\"", "\"si\"")
                .replace("width = 12", "width = 1200")
                .replace("method = \"rolled\"", "method = \"thrown\"");

        assertThat(Crews.faults(Files.writeString(folder.resolve("s.toml"), text)))
                .hasSize(3)
                .satisfiesExactly(
                        first -> assertThat(first).contains(":4: farm.units"),
                        second -> assertThat(second).contains(":13: machine[1].width"),
                        third -> assertThat(third).contains(":44: recipe[1].stage[2].method"));
    }

    @Test
    void fileThatIsNotThereIsNamed(@TempDir Path folder) {
        Path file = folder.resolve("none.toml");

        assertThat(Crews.faults(file))
                .containsExactly(
                        file + ": is not there; write one with setup, or name it with --config.");
    }

    @Test
    void fileThatIsNotTextIsNamed(@TempDir Path folder) throws IOException {
        Path file = Files.write(folder.resolve("s.toml"), new byte[] {(byte) 0xc3, 0x28});

        assertThat(Crews.faults(file))
                .containsExactly(file + ": is not UTF-8 text; save it as UTF-8.");
    }
}
