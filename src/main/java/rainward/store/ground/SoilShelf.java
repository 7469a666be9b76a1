package rainward.store.ground;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import rainward.store.row.Columns;
import rainward.store.row.Line;

/** Soil of each field at some instant, so that the next turn need not start from spring. */
public final class SoilShelf {

    private final Handle handle;

    public SoilShelf(Handle handle) {
        this.handle = handle;
    }

    /** Keeps a state; another one for the same field and instant is replaced. */
    public void put(KeptSoil soil) {
        handle.createUpdate("""
                        insert into soil_state (field, at, form, state)
                        values (:field, :at, :form, :state)
                        on conflict (field, at) do update set form = :form, state = :state
                        """)
                .bind("field", soil.field())
                .bind("at", soil.at().toEpochMilli())
                .bind("form", soil.form())
                .bind("state", soil.state())
                .execute();
    }

    /**
     * The newest state at or before a moment.
     *
     * @param form that the reader understands; states of another form are passed by
     */
    public Optional<KeptSoil> latest(String field, String form, Instant moment) {
        return handle.createQuery("""
                        select * from soil_state
                        where field = :field and form = :form and at <= :moment
                        order by at desc limit 1
                        """)
                .bind("field", field)
                .bind("form", form)
                .bind("moment", moment.toEpochMilli())
                .map(Line.of(SoilShelf::kept))
                .findOne();
    }

    /** Makes every later state be reckoned anew: the past of a field turned out to be otherwise. */
    public int forgetAfter(String field, Instant moment) {
        return handle.createUpdate("delete from soil_state where field = :field and at > :moment")
                .bind("field", field)
                .bind("moment", moment.toEpochMilli())
                .execute();
    }

    private static KeptSoil kept(ResultSet row, StatementContext context) throws SQLException {
        return new KeptSoil(
                row.getString("field"),
                Columns.instant(row, "at"),
                row.getString("form"),
                row.getBytes("state"));
    }

    /**
     * Soil of a field.
     *
     * @param field its name
     * @param at the instant it holds for
     * @param form name and version of the bytes' form
     * @param state as its owner wrote it
     */
    public record KeptSoil(String field, Instant at, String form, byte[] state) {}
}
