package rainward.store.round;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import rainward.store.row.Columns;
import rainward.store.row.Line;

/** What was said and not said about storm windows, so that deciding twice sends once. */
public final class WindowLog {

    private final Handle handle;

    public WindowLog(Handle handle) {
        this.handle = handle;
    }

    public void add(WindowEvent event) {
        handle.createUpdate("""
                        insert into window_event (storm_window, at, kind, detail)
                        values (:window, :at, :kind, :detail)
                        """)
                .bind("window", event.window())
                .bind("at", event.at().toEpochMilli())
                .bind("kind", event.kind())
                .bind("detail", event.detail())
                .execute();
    }

    /** Everything about one window, the oldest first. */
    public List<WindowEvent> of(String window) {
        return handle.createQuery("select * from window_event where storm_window = :w order by id")
                .bind("w", window)
                .map(Line.of(WindowLog::event))
                .list();
    }

    /** Everything since a moment, the oldest first. */
    public List<WindowEvent> since(Instant moment) {
        return handle.createQuery("select * from window_event where at >= :moment order by id")
                .bind("moment", moment.toEpochMilli())
                .map(Line.of(WindowLog::event))
                .list();
    }

    private static WindowEvent event(ResultSet row, StatementContext context) throws SQLException {
        return new WindowEvent(
                row.getString("storm_window"),
                Columns.instant(row, "at"),
                row.getString("kind"),
                row.getString("detail"));
    }

    /**
     * Something that happened to a window.
     *
     * @param window its id
     * @param at when
     * @param kind for instance {@code opened}
     * @param detail what the reader of the log needs, as it was written
     */
    public record WindowEvent(String window, Instant at, String kind, String detail) {}
}
