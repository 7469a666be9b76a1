package rainward.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.util.function.Function;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteJDBCLoader;
import rainward.brief.post.Outbox;
import rainward.store.row.StoreException;
import rainward.store.row.Trouble;
import rainward.weather.source.HostPauses;
import rainward.weather.source.LastGoodCopies;

/**
 * The database of one data folder. Several processes may have it open: the service and the commands
 * that people run beside it; {@link FolderLock} keeps it to one service.
 *
 * <p>Write-ahead log, so that reading never waits for writing. {@code synchronous=FULL}: what was
 * confirmed to a person or to a mail server has reached the disk before the confirmation, whatever
 * happens to the power; a season has a few thousand writes, so the price does not matter.
 */
public final class Store implements AutoCloseable {

    private static final int BUSY_MS = 15_000;
    private static final int CONNECTIONS = 4;

    private final HikariDataSource pool;
    private final Jdbi jdbi;

    private Store(HikariDataSource pool) {
        this.pool = pool;
        this.jdbi = Jdbi.create(pool);
    }

    /**
     * Opens the database of a folder, makes it where there is none and takes it through the schema
     * steps that it has not seen.
     *
     * @throws StoreException with one sentence where that cannot be done
     */
    public static Store open(Path home) {
        layEngineInto(home);
        Path database = StoreFolder.database(home);
        SQLiteDataSource source = source(database);
        Schema.bringUpToDate(source, database);
        return new Store(pool(source));
    }

    /**
     * Loads the engine, so that {@link #open} need not.
     *
     * @throws StoreException with one sentence where that cannot be done
     */
    public static void loadEngine(Path home) {
        layEngineInto(home);
        try {
            SQLiteJDBCLoader.initialize();
        } catch (Exception e) {
            throw new StoreException(home + ": " + Trouble.words(e), e);
        }
    }

    /** It lies in the jar and is laid into this folder, where nobody else can put another. */
    private static void layEngineInto(Path home) {
        StoreFolder.prepare(home);
        System.setProperty(
                "org.sqlite.tmpdir",
                StoreFolder.nativeParts(home).toAbsolutePath().toString());
    }

    private static SQLiteDataSource source(Path database) {
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

    private static HikariDataSource pool(SQLiteDataSource source) {
        HikariConfig config = new HikariConfig();
        config.setPoolName("store");
        config.setDataSource(source);
        config.setMaximumPoolSize(CONNECTIONS);
        config.setMinimumIdle(1);
        return new HikariDataSource(config);
    }

    /**
     * Does all of the work or none of it: what was written counts only once this returns. A mail
     * goes into the outbox in the same transaction as what caused it.
     *
     * @throws StoreException where the disk or the database refuses; nothing is changed then
     */
    public <T> T inTransaction(Function<Books, T> work) {
        return Trouble.told(() -> jdbi.inTransaction(handle -> work.apply(new Books(handle))));
    }

    /** Reads without holding up anybody; each question sees the newest state. */
    public <T> T read(Function<Books, T> work) {
        return Trouble.told(() -> jdbi.withHandle(handle -> work.apply(new Books(handle))));
    }

    /** The outbox as the postman takes from it, each step a transaction of its own. */
    public Outbox outbox() {
        return new OwnTransactions(this).outbox();
    }

    /** The last good copies of the feeds, each step a transaction of its own. */
    public LastGoodCopies copies() {
        return new OwnTransactions(this).copies();
    }

    /** Hosts that are left alone, each step a transaction of its own. */
    public HostPauses pauses() {
        return new OwnTransactions(this).pauses();
    }

    /** Copies the database, as it is at one moment, into an empty file. */
    void copyInto(Path empty) {
        Trouble.told(() -> jdbi.withHandle(handle -> handle.createUpdate("vacuum into :file")
                .bind("file", empty.toString())
                .execute()));
    }

    @Override
    public void close() {
        pool.close();
    }
}
