package rainward.store.ground;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import rainward.farm.Window;
import rainward.store.row.Columns;
import rainward.store.row.Line;
import rainward.weather.rain.RainObservation;

/** Rain that fell on a property, from its own gauge first of all. Values are never rewritten. */
public final class RainBook {

    private final Handle handle;

    public RainBook(Handle handle) {
        this.handle = handle;
    }

    /**
     * Writes a value down.
     *
     * @param by who said so
     * @return false where exactly this value for these hours stands there already
     */
    public boolean add(String property, RainObservation rain, String by) {
        boolean known = newest(property, rain.window()).stream()
                .anyMatch(before -> before.source().equals(rain.source())
                        && before.window().equals(rain.window())
                        && Double.compare(before.amountMm(), rain.amountMm()) == 0);
        if (known) {
            return false;
        }
        handle.createUpdate("""
                        insert into rain
                          (property, source, from_at, to_at, rain_mm, recorded_at, said_by)
                        values (:property, :source, :from, :to, :mm, :at, :by)
                        """)
                .bind("property", property)
                .bind("source", rain.source())
                .bind("from", rain.window().from().toEpochMilli())
                .bind("to", rain.window().to().toEpochMilli())
                .bind("mm", rain.amountMm())
                .bind("at", rain.fetchedAt().toEpochMilli())
                .bind("by", by)
                .execute();
        return true;
    }

    /**
     * Values that touch a stretch of time, by time; of several for the same hours from one source
     * the newest only.
     */
    public List<RainObservation> newest(String property, Window stretch) {
        return handle.createQuery("""
                        select * from rain as r
                        where property = :property and from_at < :to and to_at > :from
                          and not exists (select 1 from rain as later
                            where later.property = r.property and later.source = r.source
                              and later.from_at = r.from_at and later.to_at = r.to_at
                              and later.id > r.id)
                        order by from_at, id
                        """)
                .bind("property", property)
                .bind("from", stretch.from().toEpochMilli())
                .bind("to", stretch.to().toEpochMilli())
                .map(Line.of(RainBook::observation))
                .list();
    }

    /** Everything ever written down, corrected values too, in the order of writing. */
    public List<RainObservation> all(String property) {
        return handle.createQuery("select * from rain where property = :property order by id")
                .bind("property", property)
                .map(Line.of(RainBook::observation))
                .list();
    }

    private static RainObservation observation(ResultSet row, StatementContext context)
            throws SQLException {
        Instant from = Columns.instant(row, "from_at");
        return new RainObservation(
                new Window(from, Columns.instant(row, "to_at")),
                row.getDouble("rain_mm"),
                row.getString("source"),
                Columns.instant(row, "recorded_at"),
                row.getString("said_by"));
    }
}
