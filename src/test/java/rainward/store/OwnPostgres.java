package rainward.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** A real PostgreSQL for all tests of one run, with an empty database for whoever asks. */
public final class OwnPostgres {

    private static final Map<Path, DatabaseServer> DATABASES = new ConcurrentHashMap<>();

    /** Started by the first that needs it; ended with the process. */
    private static final class Running {
        static final EmbeddedPostgres SERVER = start();

        private static EmbeddedPostgres start() {
            try {
                return EmbeddedPostgres.builder()
                        .setServerConfig("fsync", "off")
                        .setServerConfig("max_connections", "200")
                        .start();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private OwnPostgres() {}

    /** The database that stands for a folder; made empty when first asked for. */
    public static DatabaseServer databaseOf(Path home) {
        return DATABASES.computeIfAbsent(home, key -> made("of_" + DATABASES.size()));
    }

    /** Sorts by the rules of a language of its own, so that what leans on bytes is seen. */
    private static DatabaseServer made(String name) {
        try (Connection connection = Running.SERVER.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("create database " + name + " template template0 encoding 'UTF8'"
                    + " locale_provider icu icu_locale 'en' locale 'C'");
            return at(name);
        } catch (SQLException e) {
            throw new IllegalStateException("no database for a test", e);
        }
    }

    /** Nobody is let into the database of a folder, and whoever is in is put out. */
    public static void shut(Path home) throws SQLException {
        String name = name(home);
        asOwner("alter database " + name + " allow_connections false");
        asOwner("select pg_terminate_backend(pid) from pg_stat_activity where datname = '" + name
                + "'");
    }

    public static void letIn(Path home) throws SQLException {
        asOwner("alter database " + name(home) + " allow_connections true");
    }

    private static String name(Path home) {
        String url = databaseOf(home).url();
        return url.substring(url.lastIndexOf('/') + 1);
    }

    /** From now on the server wants a password of the user "clerk". */
    static void askClerkForPassword(String password) throws SQLException, IOException {
        asOwner("create role clerk login password '" + password + "'");
        try (Connection connection = Running.SERVER.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("show hba_file")) {
            row.next();
            Path file = Path.of(row.getString(1));
            Files.writeString(file, "host all clerk all scram-sha-256\n" + Files.readString(file));
        }
        asOwner("select pg_reload_conf()");
    }

    private static void asOwner(String sql) throws SQLException {
        try (Connection connection = Running.SERVER.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** A database of this server by name, whether it is there or not. */
    static DatabaseServer at(String name) {
        return new DatabaseServer(
                "jdbc:postgresql://localhost:" + Running.SERVER.getPort() + "/" + name,
                "postgres",
                "postgres");
    }
}
