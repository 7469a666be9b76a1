package rainward.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import rainward.store.row.StoreException;

/** Files and folders that only their owner may read, from the first byte on. */
public final class OwnFile {

    private OwnFile() {}

    /** Makes a folder where there is none. */
    public static Path folder(Path folder) {
        return StoreFolder.prepare(folder);
    }

    /** Makes an empty file, or narrows one that is there. */
    public static Path made(Path file) {
        return StoreFolder.ownerOnly(file);
    }

    /** Writes a text. */
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
