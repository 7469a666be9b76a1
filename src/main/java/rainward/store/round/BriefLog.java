package rainward.store.round;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import rainward.store.row.Columns;
import rainward.store.row.Line;

/** Which days have had their brief; no day has two. */
public final class BriefLog {

    private final Handle handle;

    public BriefLog(Handle handle) {
        this.handle = handle;
    }

    /**
     * Takes the day for a brief, in the same transaction as its mails.
     *
     * @return false where the day has had one; then nothing is written and none may go out
     */
    public boolean take(WrittenBrief brief) {
        return handle.createUpdate("""
                                insert into brief_sent (day, as_of, recorded_at, late, detail)
                                values (:day, :asOf, :at, :late, :detail)
                                on conflict (day) do nothing
                                """)
                        .bind("day", brief.day().toString())
                        .bind("asOf", brief.asOf().toEpochMilli())
                        .bind("at", brief.recordedAt().toEpochMilli())
                        .bind("late", brief.late() ? 1 : 0)
                        .bind("detail", brief.detail())
                        .execute()
                == 1;
    }

    public Optional<WrittenBrief> of(LocalDate day) {
        return handle.createQuery("select * from brief_sent where day = :day")
                .bind("day", day.toString())
                .map(Line.of(BriefLog::brief))
                .findOne();
    }

    /** The newest brief of an earlier day, so that today's can say what changed. */
    public Optional<WrittenBrief> lastBefore(LocalDate day) {
        return handle.createQuery(
                        "select * from brief_sent where day < :day order by day desc limit 1")
                .bind("day", day.toString())
                .map(Line.of(BriefLog::brief))
                .findOne();
    }

    private static WrittenBrief brief(ResultSet row, StatementContext context) throws SQLException {
        return new WrittenBrief(
                LocalDate.parse(row.getString("day")),
                Columns.instant(row, "as_of"),
                Columns.instant(row, "recorded_at"),
                row.getInt("late") == 1,
                row.getString("detail"));
    }

    /**
     * A brief that was written into the outbox.
     *
     * @param day of the farm
     * @param asOf the moment it holds for
     * @param recordedAt when it was written
     * @param late true where the hour of the brief had passed
     * @param detail what tomorrow's brief needs to know of it, as it was written
     */
    public record WrittenBrief(
            LocalDate day, Instant asOf, Instant recordedAt, boolean late, String detail) {}
}
