package rainward.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import rainward.store.row.StoreException;
import rainward.store.row.Trouble;

/** Copies of the database, made while it is in use, and put back. */
public final class Backups {

    private static final String PREFIX = "rainward-";
    private static final String SUFFIX = ".db";
    private static final String UNFINISHED = ".part";

    private Backups() {}

    /**
     * Makes the copy of a day and lets go of the oldest. A copy counts only once it is whole, has
     * been looked through and has reached the disk; until then it has another name. A damaged
     * database is not copied: its copy would push a good one out.
     *
     * @param folder of the copies
     * @param day another copy of the same day is replaced
     * @param keep how many to keep, at least one
     * @return the copy
     * @throws StoreException where it cannot be made; earlier copies stay
     */
    public static Path make(Store store, Path folder, LocalDate day, int keep) {
        store.noCopies().ifPresent(words -> {
            throw new StoreException(words);
        });
        Path copies = StoreFolder.prepare(folder);
        Path whole = copies.resolve(PREFIX + day + SUFFIX);
        Path part = copies.resolve(PREFIX + day + UNFINISHED);
        try {
            clearUnfinished(copies);
            requireSound(store);
            store.copyInto(StoreFolder.ownerOnly(part));
            requireSound(part);
            reachDisk(part);
            Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE);
            forgetOldest(copies, Math.max(1, keep));
            return whole;
        } catch (IOException e) {
            throw new StoreException(
                    whole + ": the backup could not be written (" + e
                            + "); make room, or check the permissions of its folder.",
                    e);
        } finally {
            leave(part);
        }
    }

    private static void requireSound(Store store) {
        String said = store.soundness();
        if (!said.equals("ok")) {
            throw new StoreException("the database is damaged (" + said
                    + "), so it was not copied over a good backup; `rainward restore` lists them.");
        }
    }

    /** SQLite itself does not wait for the disk when it writes a copy. */
    private static void reachDisk(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** What a backup left behind that was killed. */
    private static void clearUnfinished(Path copies) throws IOException {
        try (Stream<Path> all = Files.list(copies)) {
            all.filter(file -> name(file).matches(PREFIX + "[0-9-]{10}\\" + UNFINISHED))
                    .forEach(Backups::leave);
        }
    }

    private static void leave(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException e) {
            // It has no name that anything is put back from; the next backup tries again.
        }
    }

    private static void forgetOldest(Path copies, int keep) throws IOException {
        List<Path> newestFirst = in(copies);
        for (Path old :
                newestFirst.subList(Math.min(keep, newestFirst.size()), newestFirst.size())) {
            Files.delete(old);
        }
    }

    /**
     * The copies in a folder, the newest first; none where there is no folder.
     *
     * @throws StoreException where the folder cannot be read
     */
    public static List<Path> in(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(Backups::isCopy)
                    .sorted(Comparator.comparing(Backups::name).reversed())
                    .toList();
        } catch (IOException e) {
            throw new StoreException(
                    folder + ": cannot be read (" + e + "); check its permissions.", e);
        }
    }

    private static boolean isCopy(Path file) {
        return name(file).matches(PREFIX + "\\d{4}-\\d{2}-\\d{2}\\" + SUFFIX);
    }

    private static String name(Path file) {
        return String.valueOf(file.getFileName());
    }

    /**
     * Puts a copy back in place of the database of a folder, which is kept in a folder of its own.
     * The copy is looked through first. Killed in the middle, it leaves a state in which nothing
     * starts until it is given again.
     *
     * @param home data folder that no service holds
     * @param copy to be put back; it stays where it is
     * @param now for the name of what was there
     * @return where the database that was there is now
     * @throws StoreException where the copy is not sound; nothing is changed then
     */
    public static Path restore(Path home, Path copy, Instant now) {
        FolderLock held = FolderLock.take(home);
        try {
            requireSound(copy);
            Path aside = StoreFolder.prepare(
                    home.resolve("before-restore-" + now.toString().replace(':', '.')));
            Path part = StoreFolder.ownerOnly(home.resolve(StoreFolder.RESTORING));
            Files.copy(copy, part, StandardCopyOption.REPLACE_EXISTING);
            reachDisk(StoreFolder.ownerOnly(part));
            // The database goes first: with its log alone gone it would open, and lack the newest.
            for (String more : List.of("", "-wal", "-shm")) {
                Path was = home.resolve(StoreFolder.DATABASE + more);
                if (Files.exists(was)) {
                    Files.move(was, aside.resolve(StoreFolder.DATABASE + more));
                }
            }
            Files.move(part, home.resolve(StoreFolder.DATABASE), StandardCopyOption.ATOMIC_MOVE);
            return aside.resolve(StoreFolder.DATABASE);
        } catch (IOException e) {
            throw new StoreException(
                    copy + ": could not be put back (" + e + "); what was there is still in " + home
                            + ".",
                    e);
        } finally {
            held.close();
        }
    }

    /**
     * Looks through a copy without changing it.
     *
     * @throws StoreException where it is damaged, or of a newer program
     */
    public static void requireSound(Path copy) {
        if (!Files.isRegularFile(copy)) {
            throw new StoreException(copy + ": is not there; name a backup file.");
        }
        try (Connection connection = asItIs(copy);
                Statement statement = connection.createStatement()) {
            String found = first(statement, "pragma integrity_check");
            String loose = first(statement, "select count(*) from pragma_foreign_key_check");
            int version = Schema.version(connection);
            if (!found.equals("ok") || !loose.equals("0")) {
                throw new StoreException(
                        copy + ": is damaged (" + found + "); use another backup.");
            }
            if (version < 1 || version > Schema.NEWEST) {
                throw new StoreException(
                        copy + ": is of schema " + version + ", this Rainward knows 1" + " to "
                                + Schema.NEWEST + "; use a backup or a program that fits.");
            }
        } catch (SQLException e) {
            throw new StoreException(copy + ": " + Trouble.words(e), e);
        }
    }

    /** A copy, opened so that not a byte beside it is written. */
    static Connection asItIs(Path copy) throws SQLException {
        return DriverManager.getConnection(
                "jdbc:sqlite:file:" + copy.toAbsolutePath().toUri().getRawPath() + "?immutable=1");
    }

    private static String first(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            return row.next() ? String.valueOf(row.getString(1)) : "";
        }
    }
}
