package rainward.store.journal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;
import rainward.input.check.StandVerdict;
import rainward.store.row.Columns;
import rainward.store.row.Line;

/** What came up: counted in the field, beside the chance that was given when it was seeded. */
public final class StandBook {

    private final Handle handle;

    public StandBook(Handle handle) {
        this.handle = handle;
    }

    /**
     * Writes a check down; thin and failed stands open a new round of the recipe.
     *
     * @return the line of the journal
     */
    public long add(StandCheck check) {
        JournalEntry.Kind kind = switch (check.result()) {
            case UP -> JournalEntry.Kind.STAND_UP;
            case THIN -> JournalEntry.Kind.STAND_THIN;
            case FAILED -> JournalEntry.Kind.STAND_FAILED;
        };
        JournalEntry.Detail detail = new JournalEntry.Detail(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                check.mix(),
                Optional.empty(),
                OptionalLong.empty(),
                check.finding().note());
        long line = new JournalTable(handle).append(check.field(), kind, check.said(), detail);
        handle.createUpdate("""
                        insert into stand_check
                          (journal, counted_fraction, chance_at_seeding, cause)
                        values (:line, :counted, :chance, :cause)
                        """)
                .bind("line", line)
                .bind("counted", boxed(check.finding().countedFraction()))
                .bind("chance", boxed(check.finding().chanceAtSeeding()))
                .bind(
                        "cause",
                        check.finding().cause().map(StandVerdict.Cause::name).orElse(null))
                .execute();
        return line;
    }

    private static @Nullable Double boxed(OptionalDouble number) {
        return number.isPresent() ? number.getAsDouble() : null;
    }

    /** Checks of all fields since a moment that still count, the oldest first. */
    public List<StandCheck> since(Instant moment) {
        return handle.createQuery("""
                        select *, coalesce(field.called, field.name) as goes_by from stand_check
                        join journal on journal.id = stand_check.journal
                        join field on field.name = journal.field
                        where at >= :moment and not exists
                          (select 1 from journal as undoing where undoing.undoes = journal.id)
                        order by journal.id
                        """)
                .bind("moment", moment.toEpochMilli())
                .map(Line.of(StandBook::check))
                .list();
    }

    private static StandCheck check(ResultSet row, StatementContext context) throws SQLException {
        Finding finding = new Finding(
                Columns.real(row, "counted_fraction"),
                Columns.real(row, "chance_at_seeding"),
                Columns.text(row, "cause").map(StandVerdict.Cause::valueOf),
                Columns.text(row, "note"));
        return new StandCheck(
                row.getString("goes_by"),
                switch (JournalEntry.Kind.valueOf(row.getString("kind"))) {
                    case STAND_UP -> StandVerdict.UP;
                    case STAND_THIN -> StandVerdict.THIN;
                    default -> StandVerdict.FAILED;
                },
                Columns.text(row, "mix"),
                finding,
                SaidRow.of(row));
    }

    /**
     * A look at a field.
     *
     * @param field its name
     * @param result of the look
     * @param mix that was sown
     * @param finding what was seen
     * @param said when and by whom
     */
    public record StandCheck(
            String field,
            StandVerdict result,
            Optional<String> mix,
            Finding finding,
            JournalEntry.Said said) {}

    /**
     * What was seen.
     *
     * @param countedFraction plants counted, as a share of the live seed sown
     * @param chanceAtSeeding chance of a stand that was given when it was seeded, 0 to 1
     * @param cause of a thin or failed stand
     * @param note in the person's words
     */
    public record Finding(
            OptionalDouble countedFraction,
            OptionalDouble chanceAtSeeding,
            Optional<StandVerdict.Cause> cause,
            Optional<String> note) {}
}
