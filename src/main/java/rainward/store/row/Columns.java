package rainward.store.row;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/** Columns that may be empty, and instants. */
public final class Columns {

    private Columns() {}

    public static Instant instant(ResultSet row, String column) throws SQLException {
        return Instant.ofEpochMilli(row.getLong(column));
    }

    public static Optional<Instant> maybeInstant(ResultSet row, String column) throws SQLException {
        return whole(row, column).map(Instant::ofEpochMilli);
    }

    public static Optional<String> text(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getString(column));
    }

    public static Optional<Long> whole(ResultSet row, String column) throws SQLException {
        long value = row.getLong(column);
        return row.wasNull() ? Optional.empty() : Optional.of(value);
    }

    public static OptionalDouble real(ResultSet row, String column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
