package rainward.intake;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.function.Function;

/** A file of the person as text. */
final class TextFile {

    private static final long LARGEST_BYTES = 64L << 20;

    private TextFile() {}

    /** Reads a file and hands it on; a file that is no text at all is one fault. */
    static <T> Intake<T> read(Path file, Function<String, Intake<T>> next) {
        String name = file.toString();
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                return Faults.single(name, "", "is larger than 64 MB", "split it");
            }
            String text = Files.readString(file);
            return next.apply(text.startsWith("\uFEFF") ? text.substring(1) : text);
        } catch (NoSuchFileException e) {
            return Faults.single(name, "", "is not there", "check the name");
        } catch (CharacterCodingException e) {
            return Faults.single(name, "", "is not UTF-8 text", "save it as UTF-8");
        } catch (IOException e) {
            return Faults.single(
                    name, "", "cannot be read (" + e.getMessage() + ")", "check its permissions");
        }
    }
}
