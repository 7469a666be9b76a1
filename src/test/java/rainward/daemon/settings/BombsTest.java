package rainward.daemon.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Settings that are small on disk and would be endless in memory or time. */
class BombsTest {

    private static final int MANY = 200_000;

    @TempDir
    Path folder;

    static Stream<String> bombs() {
        return Stream.of(
                "a = " + "[".repeat(MANY) + "]".repeat(MANY),
                "a = " + "{a=".repeat(MANY) + "1" + "}".repeat(MANY),
                "a" + ".a".repeat(MANY) + " = 1",
                "[" + "a.".repeat(MANY) + "a]",
                "[weather]\ntraces = " + "9".repeat(MANY),
                "[weather]\ntraces = 1e999999999",
                "[farm]\nname = \"" + "x".repeat(MANY) + "\"",
                "[[machine]]\n".repeat(40_000),
                "\u0000".repeat(MANY));
    }

    @ParameterizedTest
    @MethodSource("bombs")
    void bombIsToldAsAFaultOfTheFile(String bomb) throws IOException {
        Path file = Files.writeString(folder.resolve("s.toml"), bomb);

        List<String> faults = Crews.faults(file);

        assertThat(faults).isNotEmpty();
        assertThat(faults.get(0)).startsWith(file.toString()).hasSizeLessThan(2000);
    }
}
