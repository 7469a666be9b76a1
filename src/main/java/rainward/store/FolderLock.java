package rainward.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import rainward.store.row.StoreException;

/**
 * Holds a data folder for one service at a time. The operating system lets go of it when the
 * process dies, however it dies, so that a stale file never locks anybody out.
 */
public final class FolderLock implements AutoCloseable {

    private static final String NAME = "service.lock";

    private final FileChannel file;

    private FolderLock(FileChannel file) {
        this.file = file;
    }

    /**
     * Takes the folder.
     *
     * @throws StoreException where another process holds it
     */
    public static FolderLock take(Path home) {
        Path path = StoreFolder.prepare(home).resolve(NAME);
        try {
            FileChannel file = FileChannel.open(
                    StoreFolder.ownerOnly(path), StandardOpenOption.READ, StandardOpenOption.WRITE);
            Optional<FileLock> lock = tryLock(file);
            if (lock.isEmpty()) {
                file.close();
                throw new StoreException(inUse(home, path));
            }
            sign(file);
            return new FolderLock(file);
        } catch (IOException e) {
            throw new StoreException(
                    home + ": cannot be locked (" + e.getMessage() + "); check its permissions.",
                    e);
        }
    }

    /** The lock stands apart from the number, so that others can read the number. */
    private static Optional<FileLock> tryLock(FileChannel file) throws IOException {
        try {
            return Optional.ofNullable(file.tryLock(1 << 20, 1, false));
        } catch (OverlappingFileLockException heldByThisProcess) {
            return Optional.empty();
        }
    }

    private static void sign(FileChannel file) throws IOException {
        String pid = ProcessHandle.current().pid() + "\n";
        file.truncate(0);
        file.write(ByteBuffer.wrap(pid.getBytes(StandardCharsets.UTF_8)), 0);
    }

    private static String inUse(Path home, Path path) throws IOException {
        String pid = Files.readString(path).strip();
        String holder = pid.isEmpty() ? "another process" : "process " + pid;
        return home
                + ": in use by "
                + holder
                + "; stop that service first, or give this one its own folder with --home.";
    }

    @Override
    public void close() {
        try {
            file.close();
        } catch (IOException e) {
            throw new StoreException("the lock of the data folder could not be let go", e);
        }
    }
}
