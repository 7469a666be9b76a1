package rainward.daemon.schedule;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import org.quartz.utils.ConnectionProvider;
import org.quartz.utils.DBConnectionManager;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import rainward.store.OwnFile;

/**
 * The database file that Quartz keeps its triggers in. Quartz has no SQLite dialect; its PostgreSQL
 * one works on SQLite once BYTEA is called BLOB, since both know neither {@code getBlob} nor
 * auto-increment there.
 */
final class QuartzStore implements ConnectionProvider {

    private static final String TABLES = "/org/quartz/impl/jdbcjobstore/tables_postgres.sql";

    private final SQLiteDataSource source;

    private QuartzStore(SQLiteDataSource source) {
        this.source = source;
    }

    /** Opens the file, with its tables, and makes it known to Quartz under a name. */
    static QuartzStore register(String name, Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setBusyTimeout(10_000);
        // A deferred transaction that later writes fails with SQLITE_BUSY under a second writer.
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + OwnFile.made(file).toAbsolutePath());
        QuartzStore store = new QuartzStore(source);
        store.createTables();
        DBConnectionManager.getInstance().addConnectionProvider(name, store);
        return store;
    }

    private void createTables() throws SQLException {
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            if (hasTables(statement)) {
                return;
            }
            connection.setAutoCommit(false);
            for (String sql : script().split(";")) {
                if (!sql.isBlank()) {
                    statement.executeUpdate(sql);
                }
            }
            connection.commit();
        }
    }

    private static boolean hasTables(Statement statement) throws SQLException {
        try (ResultSet found = statement.executeQuery(
                "select 1 from sqlite_master where upper(name) = 'QRTZ_TRIGGERS'")) {
            return found.next();
        }
    }

    private static String script() {
        try (InputStream in = QuartzStore.class.getResourceAsStream(TABLES)) {
            if (in == null) {
                throw new IllegalStateException("Quartz brings no " + TABLES);
            }
            String script =
                    new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("BYTEA", "BLOB");
            return String.join(
                    "\n",
                    Arrays.stream(script.split("\n"))
                            .filter(line ->
                                    !line.startsWith("--") && !line.strip().equals("COMMIT;"))
                            .toList());
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + TABLES, e);
        }
    }

    @Override
    public Connection getConnection() throws SQLException {
        return source.getConnection();
    }

    @Override
    public void shutdown() {
        // Every connection is closed by the one who asked for it.
    }

    @Override
    public void initialize() {
        // Opened on registration.
    }
}
