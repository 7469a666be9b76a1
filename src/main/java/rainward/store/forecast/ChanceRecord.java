package rainward.store.forecast;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import rainward.farm.Window;
import rainward.store.row.Columns;
import rainward.store.row.Line;
import rainward.weather.skill.SaidChance;

/** What forecasts said of periods then ahead, to be held against what came. */
public final class ChanceRecord {

    private final Handle handle;

    public ChanceRecord(Handle handle) {
        this.handle = handle;
    }

    /**
     * Keeps what a forecast said, in whatever order forecasts come: of one period and class of lead
     * times the last one before the class's middle, or else the first one after it.
     */
    public void add(String property, List<SaidChance> said) {
        for (SaidChance chance : said) {
            handle.createUpdate("""
                            insert into said_chance
                              (property, lead, from_at, to_at, source, issued_at, chance)
                            values (:property, :lead, :from, :to, :source, :issued, :chance)
                            on conflict (property, from_at, to_at, lead) do update
                            set source = :source, issued_at = :issued, chance = :chance
                            where case
                              when said_chance.from_at - said_chance.issued_at >= :middle then
                                :before_middle and :issued > said_chance.issued_at
                              else :before_middle or :issued < said_chance.issued_at end
                            """)
                    .bind("property", property)
                    .bind("lead", chance.lead().name())
                    .bind("from", chance.window().from().toEpochMilli())
                    .bind("to", chance.window().to().toEpochMilli())
                    .bind("source", chance.source())
                    .bind("issued", chance.issuedAt().toEpochMilli())
                    .bind("chance", chance.probability())
                    .bind("middle", Math.round(chance.lead().middleHours() * 3_600_000))
                    .bind("before_middle", chance.leadHours() >= chance.lead().middleHours())
                    .execute();
        }
    }

    /** What was said of periods of a property that begin in a stretch of time, by time. */
    public List<SaidChance> of(String property, Window stretch) {
        return handle.createQuery("""
                        select * from said_chance
                        where property = :property and from_at >= :from and from_at < :to
                        order by from_at, issued_at
                        """)
                .bind("property", property)
                .bind("from", stretch.from().toEpochMilli())
                .bind("to", stretch.to().toEpochMilli())
                .map(Line.of(ChanceRecord::said))
                .list();
    }

    private static SaidChance said(ResultSet row, StatementContext context) throws SQLException {
        Instant from = Columns.instant(row, "from_at");
        return new SaidChance(
                row.getString("source"),
                Columns.instant(row, "issued_at"),
                new Window(from, Columns.instant(row, "to_at")),
                row.getDouble("chance"));
    }
}
