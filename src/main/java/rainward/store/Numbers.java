package rainward.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** Asks a bare connection about a table by its name. */
final class Numbers {

    private Numbers() {}

    /** The number that a question about a table gives, 0 where it gives none. */
    static long ask(Connection connection, String sql, String table) throws SQLException {
        try (PreparedStatement asking = connection.prepareStatement(sql)) {
            asking.setString(1, table);
            try (ResultSet row = asking.executeQuery()) {
                return row.next() ? row.getLong(1) : 0;
            }
        }
    }

    static void run(Connection connection, String sql, String table) throws SQLException {
        try (PreparedStatement running = connection.prepareStatement(sql)) {
            running.setString(1, table);
            running.executeUpdate();
        }
    }
}
