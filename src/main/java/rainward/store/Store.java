package rainward.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteJDBCLoader;
import rainward.brief.post.Outbox;
import rainward.store.row.StoreException;
import rainward.store.row.Trouble;
import rainward.weather.source.HostPauses;
import rainward.weather.source.LastGoodCopies;

/**
 * The database of one data folder. Several processes may have it open: the service and the commands
 * that people run beside it; {@link FolderLock} keeps it to one service. It is a file of the
 * folder, or a database of a server that its settings name.
 */
public final class Store implements AutoCloseable {

    private static final int CONNECTIONS = 4;

    private final Engine engine;
    private final HikariDataSource pool;
    private final Jdbi jdbi;
    private final AtomicReference<@Nullable Instant> silentSince = new AtomicReference<>();

    private Store(Engine engine, HikariDataSource pool) {
        this.engine = engine;
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
        return open(new SqliteEngine(StoreFolder.database(home)));
    }

    /**
     * Opens the database of a server; it must be there, and is taken through the schema steps that
     * it has not seen.
     *
     * @throws StoreException with one sentence where that cannot be done
     */
    public static Store open(DatabaseServer server) {
        return open(new PostgresEngine(server));
    }

    private static Store open(Engine engine) {
        DataSource source = engine.source();
        Schema.bringUpToDate(source, engine);
        return new Store(engine, pool(engine, source));
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

    private static HikariDataSource pool(Engine engine, DataSource source) {
        HikariConfig config = new HikariConfig();
        config.setPoolName("store");
        config.setDataSource(source);
        config.setMaximumPoolSize(CONNECTIONS);
        config.setMinimumIdle(1);
        config.setConnectionTimeout(engine.patience().toMillis());
        return new HikariDataSource(config);
    }

    /**
     * Does all of the work or none of it: what was written counts only once this returns. A mail
     * goes into the outbox in the same transaction as what caused it.
     *
     * @throws StoreException where the disk or the database refuses; nothing is changed then
     */
    public <T> T inTransaction(Function<Books, T> work) {
        return told(() -> jdbi.inTransaction(handle -> {
            engine.queueUp(handle);
            return work.apply(new Books(handle));
        }));
    }

    /** Reads without holding up anybody; each question sees the newest state. */
    public <T> T read(Function<Books, T> work) {
        return told(() -> jdbi.withHandle(handle -> work.apply(new Books(handle))));
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

    /** What is kept from others until it is closed. */
    @FunctionalInterface
    public interface Hold extends AutoCloseable {
        @Override
        void close();
    }

    /**
     * Keeps the database for one service; the file in a folder is kept by {@link FolderLock}.
     *
     * @throws StoreException where another service has it
     */
    public Hold alone() {
        return engine.alone();
    }

    /** What to do in place of a backup, where the database is one that is not copied. */
    public Optional<String> noCopies() {
        return engine.makesCopies() ? Optional.empty() : Optional.of(noCopies(engine.place()));
    }

    /** What to do in place of a backup of a server's database. */
    public static String noCopies(String url) {
        return url + ": the records are in PostgreSQL, which Rainward does not copy; let pg_dump"
                + " run every night on a machine of your own, and put a copy back with pg_restore.";
    }

    /** Looks through the whole database; {@code ok} where it is sound. */
    public String soundness() {
        return told(() -> jdbi.withHandle(engine::soundness));
    }

    /**
     * Reads the state of one moment, while others write on.
     *
     * @param folder where a file may be laid down meanwhile
     */
    void atOneMoment(Path folder, Engine.Reading reading) throws SQLException, IOException {
        engine.atOneMoment(jdbi, folder, reading);
    }

    /** Writes over a bare connection, which is not to be kept: all of it or none. */
    void allOrNothing(Engine.Reading work) throws SQLException, IOException {
        try (Handle handle = jdbi.open()) {
            handle.begin();
            try {
                engine.queueUp(handle);
                work.from(handle.getConnection());
                handle.commit();
            } catch (SQLException | IOException | RuntimeException e) {
                handle.rollback();
                throw e;
            }
        }
    }

    Engine engine() {
        return engine;
    }

    /** Where the records are, as messages name it. */
    public String place() {
        return engine.place();
    }

    /** Since when the server that keeps the database has not answered; empty while it does. */
    public Optional<Instant> silentSince() {
        return Optional.ofNullable(silentSince.get());
    }

    private <T> T told(Supplier<T> work) {
        try {
            T done = Trouble.told(work);
            silentSince.set(null);
            return done;
        } catch (StoreException e) {
            if (e.isAbsence()) {
                silentSince.compareAndSet(null, Instant.now());
                // What else is in the pool was cut off too: nobody need run into it.
                pool.getHikariPoolMXBean().softEvictConnections();
            }
            throw e;
        }
    }

    /** Copies the database, as it is at one moment, into an empty file. */
    void copyInto(Path empty) {
        told(() -> jdbi.withHandle(handle -> {
            engine.copyInto(handle, empty);
            return empty;
        }));
    }

    @Override
    public void close() {
        pool.close();
    }
}
