package rainward.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/** Columns that may be empty, and instants. */
final class Columns {

    private Columns() {}

    static Instant instant(ResultSet row, String column) throws SQLException {
        return Instant.ofEpochMilli(row.getLong(column));
    }

    static Optional<Instant> maybeInstant(ResultSet row, String column) throws SQLException {
        return whole(row, column).map(Instant::ofEpochMilli);
    }

    static Optional<String> text(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getString(column));
    }

    static Optional<Long> whole(ResultSet row, String column) throws SQLException {
        long value = row.getLong(column);
        return row.wasNull() ? Optional.empty() : Optional.of(value);
    }

    static OptionalDouble real(ResultSet row, String column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
