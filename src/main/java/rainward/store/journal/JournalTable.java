package rainward.store.journal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import org.jdbi.v3.core.statement.Update;
import org.jspecify.annotations.Nullable;
import rainward.farm.Operation;
import rainward.store.row.Columns;
import rainward.store.row.Line;

/** The journal on disk; it only ever grows, and the database itself refuses anything else. */
final class JournalTable {

    private static final String APPEND = """
            insert into journal (field, kind, stage, operation, at, recorded_at, said_by, machine,
              mix, held_until, undoes, note)
            values (:field, :kind, :stage, :operation, :at, :recorded, :by, :machine,
              :mix, :held, :undoes, :note)
            """;

    /** Lines keep the name that was said; they are read under the one the field goes by now. */
    private static final String READ = """
            select journal.*, coalesce(field.called, field.name) as goes_by
            from journal join field on field.name = journal.field
            """;

    private final Handle handle;

    JournalTable(Handle handle) {
        this.handle = handle;
    }

    long append(
            String field,
            JournalEntry.Kind kind,
            JournalEntry.Said said,
            JournalEntry.Detail detail) {
        Update update = handle.createUpdate(APPEND)
                .bind("field", field)
                .bind("kind", kind.name())
                .bind("at", said.at().toEpochMilli())
                .bind("recorded", said.recordedAt().toEpochMilli())
                .bind("by", said.by());
        return with(update, detail)
                .executeAndReturnGeneratedKeys("id")
                .mapTo(Long.class)
                .one();
    }

    private static Update with(Update update, JournalEntry.Detail detail) {
        return update.bind("stage", detail.stage().orElse(null))
                .bind("operation", detail.operation().map(Operation::name).orElse(null))
                .bind("machine", detail.machine().orElse(null))
                .bind("mix", detail.mix().orElse(null))
                .bind("held", detail.heldUntil().map(Instant::toEpochMilli).orElse(null))
                .bind("undoes", boxed(detail.undoes()))
                .bind("note", detail.note().orElse(null));
    }

    private static @Nullable Long boxed(OptionalLong number) {
        return number.isPresent() ? number.getAsLong() : null;
    }

    List<JournalEntry> all() {
        return handle.createQuery(READ + "order by journal.id")
                .map(Line.of(JournalTable::entry))
                .list();
    }

    List<JournalEntry> of(String field) {
        return handle.createQuery(READ
                        + "where coalesce(field.called, field.name) = :field order by journal.id")
                .bind("field", field)
                .map(Line.of(JournalTable::entry))
                .list();
    }

    private static JournalEntry entry(ResultSet row, StatementContext context) throws SQLException {
        return new JournalEntry(
                row.getLong("id"),
                row.getString("goes_by"),
                JournalEntry.Kind.valueOf(row.getString("kind")),
                SaidRow.of(row),
                detail(row));
    }

    private static JournalEntry.Detail detail(ResultSet row) throws SQLException {
        Optional<Long> undoes = Columns.whole(row, "undoes");
        return new JournalEntry.Detail(
                Columns.text(row, "stage"),
                Columns.text(row, "operation").map(Operation::valueOf),
                Columns.text(row, "machine"),
                Columns.text(row, "mix"),
                Columns.whole(row, "held_until").map(Instant::ofEpochMilli),
                undoes.isPresent() ? OptionalLong.of(undoes.get()) : OptionalLong.empty(),
                Columns.text(row, "note"));
    }
}
