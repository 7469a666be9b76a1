package rainward.store.forecast;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import rainward.store.row.Columns;
import rainward.store.row.Gzip;
import rainward.store.row.Json;
import rainward.store.row.Line;
import rainward.store.row.StoreException;
import rainward.weather.source.RawPull;

/** Every answer of a forecast service as it came, so that a past decision can be explained. */
public final class ForecastArchive {

    private final Handle handle;

    public ForecastArchive(Handle handle) {
        this.handle = handle;
    }

    /** Keeps an answer. */
    public void add(RawPull pull) {
        handle.createUpdate("""
                        insert into forecast_pull (source, address, status, fetched_at, issued_at,
                          headers, sha256, body_gzip)
                        values (:source, :address, :status, :fetched, :issued, :headers, :sha, :body)
                        """)
                .bind("source", pull.source())
                .bind("address", pull.address())
                .bind("status", pull.status())
                .bind("fetched", pull.fetchedAt().toEpochMilli())
                .bind("issued", pull.issuedAt().map(Instant::toEpochMilli).orElse(null))
                .bind("headers", Json.write(pull.headers()))
                .bind("sha", Gzip.sha256(pull.body()))
                .bind("body", Gzip.pack(pull.body()))
                .execute();
    }

    /** The last good answer to a question at a moment: what a decision of that moment rested on. */
    public Optional<RawPull> inForce(String address, Instant moment) {
        return handle.createQuery("""
                        select * from forecast_pull
                        where address = :address and fetched_at <= :moment and status = 200
                        order by fetched_at desc, id desc limit 1
                        """)
                .bind("address", address)
                .bind("moment", moment.toEpochMilli())
                .map(Line.of(ForecastArchive::pull))
                .findOne();
    }

    /** Answers that came in a stretch of time, the oldest first. */
    public List<RawPull> between(Instant from, Instant to) {
        return handle.createQuery("""
                        select * from forecast_pull
                        where fetched_at >= :from and fetched_at < :to order by id
                        """)
                .bind("from", from.toEpochMilli())
                .bind("to", to.toEpochMilli())
                .map(Line.of(ForecastArchive::pull))
                .list();
    }

    /**
     * Good answers of some services, the newest first, with their numbers.
     *
     * @param sources short names of the services
     * @param below only answers with lower numbers
     * @param most of them
     */
    public Map<Long, RawPull> newestOf(List<String> sources, long below, int most) {
        Map<Long, RawPull> all = new LinkedHashMap<>();
        handle.createQuery("""
                        select * from forecast_pull
                        where id < :below and status = 200 and source in (<sources>)
                        order by id desc limit :most
                        """)
                .bindList("sources", sources)
                .bind("below", below)
                .bind("most", most)
                .map((row, context) -> all.put(row.getLong("id"), pull(row, context)))
                .list();
        return all;
    }

    /** Lets go of answers that came before a moment. */
    public int forgetBefore(Instant moment) {
        return handle.createUpdate("delete from forecast_pull where fetched_at < :moment")
                .bind("moment", moment.toEpochMilli())
                .execute();
    }

    private static RawPull pull(ResultSet row, StatementContext context) throws SQLException {
        byte[] body = Gzip.unpack(row.getBytes("body_gzip"), row.getString("sha256"))
                .orElseThrow(() -> new StoreException("a stored forecast is damaged on disk; put"
                        + " back the last backup, or let the next pull replace it."));
        return new RawPull(
                row.getString("source"),
                row.getString("address"),
                row.getInt("status"),
                Json.readTexts(row.getString("headers")),
                body,
                Columns.instant(row, "fetched_at"),
                Columns.maybeInstant(row, "issued_at"));
    }
}
