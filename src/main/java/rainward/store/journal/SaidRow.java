package rainward.store.journal;

import java.sql.ResultSet;
import java.sql.SQLException;
import rainward.store.row.Columns;

/** When and by whom, as every book keeps it. */
public final class SaidRow {

    private SaidRow() {}

    /** Reads it out of a row. */
    public static JournalEntry.Said of(ResultSet row) throws SQLException {
        return new JournalEntry.Said(
                Columns.instant(row, "at"),
                Columns.instant(row, "recorded_at"),
                row.getString("said_by"));
    }
}
