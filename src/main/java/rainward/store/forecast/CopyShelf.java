package rainward.store.forecast;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import rainward.store.row.Columns;
import rainward.store.row.Gzip;
import rainward.store.row.Json;
import rainward.store.row.Line;
import rainward.weather.source.LastGoodCopies;

/** The last good answer to each question of the feeds. */
public final class CopyShelf implements LastGoodCopies {

    private final Handle handle;

    public CopyShelf(Handle handle) {
        this.handle = handle;
    }

    @Override
    public Optional<Copy> find(String address) {
        return handle.createQuery("select * from last_good_copy where address = :address")
                .bind("address", address)
                .map(Line.of(CopyShelf::copy))
                .findOne()
                .flatMap(whole -> whole);
    }

    @Override
    public void keep(Copy copy) {
        handle.createUpdate("""
                        insert into last_good_copy
                          (address, headers, sha256, body_gzip, fetched_at, confirmed_at)
                        values (:address, :headers, :sha, :body, :fetched, :confirmed)
                        on conflict (address) do update set headers = :headers, sha256 = :sha,
                          body_gzip = :body, fetched_at = :fetched, confirmed_at = :confirmed
                        """)
                .bind("address", copy.address())
                .bind("headers", Json.write(copy.headers()))
                .bind("sha", copy.sha256())
                .bind("body", Gzip.pack(copy.body()))
                .bind("fetched", copy.times().fetchedAt().toEpochMilli())
                .bind("confirmed", copy.times().confirmedAt().toEpochMilli())
                .execute();
    }

    private static Optional<Copy> copy(ResultSet row, StatementContext context)
            throws SQLException {
        String address = row.getString("address");
        String sha256 = row.getString("sha256");
        Times times =
                new Times(Columns.instant(row, "fetched_at"), Columns.instant(row, "confirmed_at"));
        var headers = Json.readTexts(row.getString("headers"));
        return Gzip.unpack(row.getBytes("body_gzip"), sha256)
                .map(body -> new Copy(address, headers, body, sha256, times));
    }
}
