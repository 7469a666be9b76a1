package rainward.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import java.util.stream.Stream;
import rainward.store.row.StoreException;

/** The data folder on disk: readable by its owner alone. */
final class StoreFolder {

    static final String DATABASE = "rainward.db";

    /** A copy on its way back; while it is there without a database, a restore was broken off. */
    static final String RESTORING = "restore.part";

    private static final String NATIVE = "native";

    /** Long enough for a sibling to load the library that it has just unpacked. */
    private static final Duration STILL_LOADING = Duration.ofMinutes(1);

    private StoreFolder() {}

    static Path prepare(Path home) {
        try {
            if (!Files.isDirectory(home)) {
                Files.createDirectories(home);
                restrict(home, "rwx------");
            }
            return home;
        } catch (FileAlreadyExistsException e) {
            throw new StoreException(
                    home + ": is a file; give a folder for the data with --home.", e);
        } catch (IOException e) {
            throw new StoreException(
                    home + ": cannot be made (" + e + "); give a folder that can be written with"
                            + " --home.",
                    e);
        }
    }

    /**
     * The database file of a folder; a restore that was broken off is not taken for a new start.
     */
    static Path database(Path home) {
        Path database = home.resolve(DATABASE);
        if (!Files.exists(database) && Files.exists(home.resolve(RESTORING))) {
            throw new StoreException(database
                    + ": is not there, because a restore was broken off; give it again"
                    + " (`rainward restore` lists the backups).");
        }
        return ownerOnly(database);
    }

    /** Makes an empty file that nobody else may read, or narrows one that is there. */
    static Path ownerOnly(Path file) {
        try {
            if (!Files.exists(file)) {
                createNarrow(file);
            }
            restrict(file, "rw-------");
            return file;
        } catch (IOException e) {
            throw new StoreException(
                    file + ": cannot be made (" + e + "); check that the folder can be written"
                            + " and the disk is not full.",
                    e);
        }
    }

    private static void createNarrow(Path file) throws IOException {
        try {
            if (posix(file.resolveSibling("."))) {
                Set<PosixFilePermission> owner = PosixFilePermissions.fromString("rw-------");
                Files.createFile(file, PosixFilePermissions.asFileAttribute(owner));
            } else {
                Files.createFile(file);
            }
        } catch (FileAlreadyExistsException madeBySiblingMeanwhile) {
            // It is there, which is all that was asked for.
        }
    }

    private static void restrict(Path path, String permissions) throws IOException {
        if (posix(path)) {
            Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
        }
    }

    private static boolean posix(Path path) throws IOException {
        return Files.getFileStore(path).supportsFileAttributeView("posix");
    }

    /**
     * Where the driver unpacks its native part: in the folder, not in a place that others can write
     * to. Each kill leaves a copy behind; they are cleared here.
     */
    static Path nativeParts(Path home) {
        Path parts = prepare(home.resolve(NATIVE));
        try (Stream<Path> left = Files.list(parts)) {
            left.filter(StoreFolder::stale).forEach(StoreFolder::clear);
        } catch (IOException e) {
            throw new StoreException(parts + ": cannot be read (" + e + ").", e);
        }
        return parts;
    }

    private static boolean stale(Path part) {
        try {
            FileTime made = Files.getLastModifiedTime(part);
            return made.toInstant().isBefore(Instant.now().minus(STILL_LOADING));
        } catch (IOException goneMeanwhile) {
            return false;
        }
    }

    private static void clear(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException heldByARunningSibling) {
            // Windows refuses while the library is loaded; the next start tries again.
        }
    }
}
