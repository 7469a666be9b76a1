package rainward.brief;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Whole texts kept beside the tests. {@code -Drainward.golden=write} writes them anew; the
 * difference is then read by a person.
 */
public final class Golden {

    private static final Path FOLDER = Path.of("src/test/resources/golden");

    private Golden() {}

    /** Holds a text against the kept one. */
    public static void check(String name, String text) {
        Path kept = FOLDER.resolve(name);
        try {
            if ("write".equals(System.getProperty("rainward.golden"))) {
                Files.createDirectories(kept.getParent());
                Files.writeString(kept, text);
            }
            assertThat(text).as("golden/%s", name).isEqualTo(Files.readString(kept));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
