package rainward.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;

/** Each engine that the store runs on, with the database that stands for a folder. */
public enum TestEngine {
    SQLITE {
        @Override
        public Store open(Path home) {
            return Store.open(home);
        }

        @Override
        public String settings(Path home) {
            return "";
        }

        @Override
        public Connection connect(Path home) throws SQLException {
            return DriverManager.getConnection("jdbc:sqlite:" + home.resolve("rainward.db"));
        }
    },

    POSTGRESQL {
        @Override
        public Store open(Path home) {
            return Store.open(OwnPostgres.databaseOf(home));
        }

        @Override
        public String settings(Path home) {
            DatabaseServer server = OwnPostgres.databaseOf(home);
            return "\n[store]\nurl = \"%s\"\nuser = \"%s\"\n"
                    .formatted(server.url(), server.user());
        }

        @Override
        public Connection connect(Path home) throws SQLException {
            DatabaseServer server = OwnPostgres.databaseOf(home);
            return DriverManager.getConnection(server.url(), server.user(), server.password());
        }
    };

    /** Opens the database that stands for a folder, the same one each time. */
    public abstract Store open(Path home);

    /** What the settings of the folder say of the database, at their end. */
    public abstract String settings(Path home);

    /** The same database past the store. */
    public abstract Connection connect(Path home) throws SQLException;
}
