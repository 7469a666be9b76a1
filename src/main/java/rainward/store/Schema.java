package rainward.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
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
    static final int NEWEST = 4;

    private Schema() {}

    static void bringUpToDate(DataSource source, Path database) {
        try (Connection connection = source.getConnection()) {
            int version = version(connection);
            if (version > NEWEST) {
                throw new StoreException(database + ": was written by a newer Rainward (schema "
                        + version + ", this one knows " + NEWEST
                        + "); install that version again.");
            }
            if (version < NEWEST) {
                keepAsItWas(connection, database, version);
                migrate(source);
            }
        } catch (SQLException | FlywayException e) {
            throw new StoreException(database + ": " + Trouble.words(e), e);
        }
    }

    /** There is no way back from a step, so what an older program can open is kept beside it. */
    private static void keepAsItWas(Connection connection, Path database, int version)
            throws SQLException {
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

    private static void migrate(DataSource source) {
        Flyway.configure()
                .dataSource(source)
                .locations("classpath:db")
                .loggers("slf4j")
                .load()
                .migrate();
    }

    /** Asked by hand: loading the library for it would cost each command a third of a second. */
    static int version(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            if (!has(statement, "flyway_schema_history")) {
                return 0;
            }
            try (ResultSet row = statement.executeQuery(
                    "select coalesce(max(cast(version as integer)), 0) from flyway_schema_history"
                            + " where success")) {
                row.next();
                return row.getInt(1);
            }
        }
    }

    private static boolean has(Statement statement, String table) throws SQLException {
        try (ResultSet row = statement.executeQuery(
                "select 1 from sqlite_master where type = 'table' and name = '" + table + "'")) {
            return row.next();
        }
    }
}
