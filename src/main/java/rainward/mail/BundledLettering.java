package rainward.mail;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import rainward.brief.picture.Lettering;

/** The letters that come with the program. */
public final class BundledLettering {

    private static final String OUTLINES = "/lettering/DejaVuSans.txt";

    private BundledLettering() {}

    /** Read when they are first asked for: the service starts without, and most commands end so. */
    private static final class Once {
        static final Lettering LETTERS = fromFile();
    }

    public static Lettering read() {
        return Once.LETTERS;
    }

    private static Lettering fromFile() {
        try (InputStream in = BundledLettering.class.getResourceAsStream(OUTLINES)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + OUTLINES);
            }
            return Lettering.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
