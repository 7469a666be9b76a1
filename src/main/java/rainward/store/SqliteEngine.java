package rainward.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import javax.sql.DataSource;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import rainward.store.row.StoreException;

/**
 * One file in the data folder.
 *
 * <p>Write-ahead log, so that reading never waits for writing. {@code synchronous=FULL}: what was
 * confirmed to a person or to a mail server has reached the disk before the confirmation, whatever
 * happens to the power; a season has a few thousand writes, so the price does not matter.
 *
 * @param database the file
 */
record SqliteEngine(Path database) implements Engine {

    private static final int BUSY_MS = 15_000;

    @Override
    public String place() {
        return database.toString();
    }

    @Override
    public DataSource source() {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        config.setBusyTimeout(BUSY_MS);
        config.enforceForeignKeys(true);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + database.toAbsolutePath());
        return source;
    }

    @Override
    public Duration patience() {
        return Duration.ofSeconds(30);
    }

    /** It lies in the folder that {@link FolderLock} keeps. */
    @Override
    public Store.Hold alone() {
        return () -> {};
    }

    @Override
    public String step(String sql) {
        return sql;
    }

    @Override
    public void keepAsItWas(Connection connection, int version) throws SQLException {
        Path copy = database.resolveSibling("before-upgrade-of-schema-" + version + ".db");
        if (version == 0 || Files.exists(copy)) {
            return;
        }
        Path part = copy.resolveSibling("before-upgrade.part");
        try (PreparedStatement copying = connection.prepareStatement("vacuum into ?")) {
            Files.deleteIfExists(part);
            copying.setString(1, StoreFolder.ownerOnly(part).toString());
            copying.execute();
            Files.move(part, copy);
        } catch (IOException e) {
            throw new StoreException(
                    copy + ": cannot be written (" + e + "), so the database was left as it is;"
                            + " make room, or check the permissions of the folder.",
                    e);
        }
    }

    /** A transaction begins as a writer: see {@code IMMEDIATE} above. */
    @Override
    public void queueUp(Handle handle) {}

    /** A transaction would hold up whoever writes, so a copy is read. */
    @Override
    public void atOneMoment(Jdbi jdbi, Path folder, Reading reading)
            throws SQLException, IOException {
        Path moment = StoreFolder.ownerOnly(folder.resolve("moment.part"));
        try {
            jdbi.useHandle(handle -> copyInto(handle, moment));
            try (Connection connection = Backups.asItIs(moment)) {
                reading.from(connection);
            }
        } finally {
            Files.deleteIfExists(moment);
        }
    }

    @Override
    public long lastNumber(Connection connection, String table) throws SQLException {
        return Numbers.ask(connection, "select seq from sqlite_sequence where name = ?", table);
    }

    @Override
    public void numberOn(Connection connection, String table, long last) throws SQLException {
        Numbers.run(connection, "delete from sqlite_sequence where name = ?", table);
        Numbers.run(
                connection,
                "insert into sqlite_sequence (name, seq) values (?, " + last + ")",
                table);
    }

    @Override
    public String soundness(Handle handle) {
        return handle.createQuery("select * from pragma_integrity_check")
                .mapTo(String.class)
                .first();
    }

    @Override
    public boolean makesCopies() {
        return true;
    }

    @Override
    public void copyInto(Handle handle, Path empty) {
        handle.createUpdate("vacuum into :file").bind("file", empty.toString()).execute();
    }
}
