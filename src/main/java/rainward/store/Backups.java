package rainward.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
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

    private Backups() {}

    /**
     * Makes the copy of a day and lets go of the oldest. A copy counts only once it is whole and
     * has been looked through; until then it has another name.
     *
     * @param folder of the copies
     * @param day another copy of the same day is replaced
     * @param keep how many to keep, at least one
     * @return the copy
     * @throws StoreException where it cannot be made; earlier copies stay
     */
    public static Path make(Store store, Path folder, LocalDate day, int keep) {
        Path copies = StoreFolder.prepare(folder);
        Path whole = copies.resolve(PREFIX + day + SUFFIX);
        Path part = copies.resolve(PREFIX + day + ".part");
        try {
            Files.deleteIfExists(part);
            store.copyInto(StoreFolder.ownerOnly(part));
            requireSound(part);
            Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE);
            forgetOldest(copies, Math.max(1, keep));
            return whole;
        } catch (IOException e) {
            throw new StoreException(
                    whole + ": the backup could not be written (" + e
                            + "); make room, or check the permissions of its folder.",
                    e);
        }
    }

    private static void forgetOldest(Path copies, int keep) throws IOException {
        List<Path> newestFirst;
        try (Stream<Path> all = Files.list(copies)) {
            newestFirst = all.filter(Backups::isCopy)
                    .sorted(Comparator.comparing(Path::getFileName).reversed())
                    .toList();
        }
        for (Path old :
                newestFirst.subList(Math.min(keep, newestFirst.size()), newestFirst.size())) {
            Files.delete(old);
        }
    }

    private static boolean isCopy(Path file) {
        return String.valueOf(file.getFileName())
                .matches(PREFIX + "\\d{4}-\\d{2}-\\d{2}\\" + SUFFIX);
    }

    /**
     * Puts a copy back in place of the database of a folder, which is kept beside it under another
     * name. The copy is looked through first.
     *
     * @param home data folder that no service holds
     * @param copy to be put back; it stays where it is
     * @param now for the name of what was there
     * @return where the database that was there is now
     * @throws StoreException where the copy is not sound; nothing is changed then
     */
    public static Path restore(Path home, Path copy, Instant now) {
        try (FolderLock held = FolderLock.take(home)) {
            requireSound(copy);
            Path database = home.resolve(StoreFolder.DATABASE);
            Path aside =
                    home.resolve("before-restore-" + now.toString().replace(':', '.') + SUFFIX);
            Path part = StoreFolder.ownerOnly(home.resolve("restore.part"));
            Files.copy(copy, part, StandardCopyOption.REPLACE_EXISTING);
            for (String more : List.of("-wal", "-shm", "")) {
                Path was = home.resolve(StoreFolder.DATABASE + more);
                if (Files.exists(was)) {
                    Files.move(was, aside.resolveSibling(aside.getFileName() + more));
                }
            }
            Files.move(StoreFolder.ownerOnly(part), database, StandardCopyOption.ATOMIC_MOVE);
            return aside;
        } catch (IOException e) {
            throw new StoreException(
                    copy + ": could not be put back (" + e + "); what was there is still in " + home
                            + ".",
                    e);
        }
    }

    /** Looks through a database without changing it. */
    private static void requireSound(Path copy) {
        if (!Files.isRegularFile(copy)) {
            throw new StoreException(copy + ": is not there; name a backup file.");
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:file:"
                        + copy.toAbsolutePath().toUri().getRawPath() + "?immutable=1");
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

    private static String first(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            return row.next() ? String.valueOf(row.getString(1)) : "";
        }
    }
}
