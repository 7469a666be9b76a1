package rainward.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import rainward.store.row.StoreException;

/** A text that only its owner may read, from its first byte on. */
public final class OwnFile {

    private OwnFile() {}

    public static void write(Path file, String text) {
        try {
            Files.writeString(StoreFolder.ownerOnly(file), text);
        } catch (IOException e) {
            throw new StoreException(
                    file + ": cannot be written (" + e + "); make room, or check the permissions.",
                    e);
        }
    }
}
