package rainward.brief.picture;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The letters that come with the program. */
public final class Letters {

    private Letters() {}

    public static Lettering kept() {
        try {
            return Lettering.of(
                    Files.readString(Path.of("src/main/resources/lettering/DejaVuSans.txt")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
