package rainward.store.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import rainward.input.record.Note;
import rainward.store.journal.JournalEntry.Said;
import rainward.store.journal.SaidRow;
import rainward.store.row.Columns;
import rainward.store.row.Json;

/**
 * The book of inputs; lines that count are those that nobody took back, with their work or alone.
 */
public final class Ledger {

    private static final String APPEND = """
            insert into ledger (kind, field, at, recorded_at, said_by, journal, undoes, entry)
            values (:kind, :field, :at, :recorded, :by, :journal, :undoes, :entry)
            """;

    /** No other line takes it back by itself. */
    private static final String STANDS =
            " and not exists (select 1 from ledger as other where other.undoes = ledger.id) ";

    /** Of a kind, under the names that fields go by now. */
    private static final String COUNTING = """
            select ledger.*, coalesce(field.called, field.name) as goes_by from ledger
            left join field on field.name = ledger.field
            where kind = :kind
            """ + STANDS + """
              and not exists (select 1 from journal where journal.undoes = ledger.journal)
            order by ledger.id
            """;

    private final Handle handle;

    public Ledger(Handle handle) {
        this.handle = handle;
    }

    /** Writes a line about nothing in particular. */
    public long add(Object entry, Said said) {
        return append(LedgerKind.of(entry), new Row(null, null, null, Json.write(entry)), said);
    }

    /** Writes a line about a field. */
    public long add(String field, Object entry, Said said) {
        return append(LedgerKind.of(entry), new Row(field, null, null, Json.write(entry)), said);
    }

    /** Writes a line that counts as long as a line of the journal does. */
    public long addWith(long journal, String field, Object entry, Said said) {
        return append(LedgerKind.of(entry), new Row(field, journal, null, Json.write(entry)), said);
    }

    /**
     * Says that a line does not count.
     *
     * @return false where there is no such line or it does not count already
     */
    public boolean undo(long id, Said said) {
        boolean counts =
                handle.createQuery("select count(*) from ledger where id = :id and kind <> 'UNDONE'"
                                        + STANDS)
                                .bind("id", id)
                                .mapTo(Integer.class)
                                .one()
                        > 0;
        if (counts) {
            append(
                    LedgerKind.UNDONE,
                    new Row(null, null, id, Json.write(new Note("line " + id))),
                    said);
        }
        return counts;
    }

    /** Every line of a kind that counts, in the order written. */
    public <T> List<LedgerLine<T>> all(Class<T> type) {
        return handle.createQuery(COUNTING)
                .bind("kind", LedgerKind.of(type).name())
                .map((row, context) -> line(row, type))
                .list();
    }

    private static <T> LedgerLine<T> line(ResultSet row, Class<T> type) throws SQLException {
        return new LedgerLine<>(
                row.getLong("id"),
                Columns.text(row, "goes_by"),
                SaidRow.of(row),
                Json.read(row.getString("entry"), type));
    }

    /** Of a kind, what came with a line of the journal and was not taken back by itself. */
    public <T> List<T> ofJournal(long journal, Class<T> type) {
        return handle.createQuery(
                        "select entry from ledger where kind = :kind and journal = :journal"
                                + STANDS + "order by id")
                .bind("kind", LedgerKind.of(type).name())
                .bind("journal", journal)
                .mapTo(String.class)
                .map(text -> Json.read(text, type))
                .list();
    }

    /** The line of a kind that holds just this and still counts, if there is one. */
    public <T> Optional<LedgerLine<T>> same(Class<T> type, Optional<String> field, T entry) {
        return all(type).stream()
                .filter(line -> line.field().equals(field) && line.entry().equals(entry))
                .findFirst();
    }

    private record Row(
            @Nullable String field,
            @Nullable Long journal,
            @Nullable Long undoes,
            String entry) {}

    private long append(LedgerKind kind, Row row, Said said) {
        return handle.createUpdate(APPEND)
                .bind("kind", kind.name())
                .bind("field", row.field())
                .bind("at", said.at().toEpochMilli())
                .bind("recorded", said.recordedAt().toEpochMilli())
                .bind("by", said.by())
                .bind("journal", row.journal())
                .bind("undoes", row.undoes())
                .bind("entry", row.entry())
                .executeAndReturnGeneratedKeys("id")
                .mapTo(Long.class)
                .one();
    }
}
