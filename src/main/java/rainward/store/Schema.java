package rainward.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import rainward.store.row.StoreException;
import rainward.store.row.Trouble;

/** Takes a database through the schema steps it has not seen; there is no way back. */
final class Schema {

    /** The newest step in {@code src/main/resources/db}. */
    static final int NEWEST = SchemaSteps.FILES.size();

    private Schema() {}

    static void bringUpToDate(DataSource source, Engine engine) {
        try (Connection connection = source.getConnection()) {
            int version = version(connection);
            if (version > NEWEST) {
                throw new StoreException(
                        engine.place() + ": was written by a newer Rainward (schema "
                                + version + ", this one knows " + NEWEST
                                + "); install that version again.");
            }
            if (version < NEWEST) {
                engine.keepAsItWas(connection, version);
                migrate(source, engine);
            }
        } catch (SQLException | FlywayException e) {
            throw new StoreException(engine.place() + ": " + Trouble.words(e), e);
        }
    }

    private static void migrate(DataSource source, Engine engine) {
        Flyway.configure()
                .dataSource(source)
                .locations("classpath:db")
                .resourceProvider(new SchemaSteps(engine))
                .loggers("slf4j")
                .load()
                .migrate();
    }

    /** Asked by hand: loading the library for it would cost each command a third of a second. */
    static int version(Connection connection) throws SQLException {
        if (!has(connection, "flyway_schema_history")) {
            return 0;
        }
        try (Statement statement = connection.createStatement();
                ResultSet row =
                        statement.executeQuery("select coalesce(max(cast(version as integer)), 0)"
                                + " from flyway_schema_history where success")) {
            row.next();
            return row.getInt(1);
        }
    }

    private static boolean has(Connection connection, String table) throws SQLException {
        try (ResultSet row = connection
                .getMetaData()
                .getTables(null, connection.getSchema(), table, new String[] {"TABLE"})) {
            return row.next();
        }
    }
}
