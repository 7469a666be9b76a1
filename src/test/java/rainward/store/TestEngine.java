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
        public Connection connect(Path home) throws SQLException {
            DatabaseServer server = OwnPostgres.databaseOf(home);
            return DriverManager.getConnection(server.url(), server.user(), server.password());
        }
    };

    /** Opens the database that stands for a folder, the same one each time. */
    public abstract Store open(Path home);

    /** The same database past the store. */
    public abstract Connection connect(Path home) throws SQLException;
}
