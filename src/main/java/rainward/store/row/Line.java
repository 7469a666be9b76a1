package rainward.store.row;

import java.time.DateTimeException;
import org.jdbi.v3.core.mapper.RowMapper;

/** One line of a table, made into a value. */
public final class Line {

    private Line() {}

    /** The same reader; a line that no program wrote so is told of as damage and not as a bug. */
    public static <T> RowMapper<T> of(RowMapper<T> reader) {
        return (row, context) -> {
            try {
                return reader.map(row, context);
            } catch (IllegalArgumentException | DateTimeException | NullPointerException e) {
                throw StoreException.damaged("a line makes no sense (" + e.getMessage() + ")", e);
            }
        };
    }
}
