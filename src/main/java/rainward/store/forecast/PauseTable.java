package rainward.store.forecast;

import java.util.Optional;
import org.jdbi.v3.core.Handle;
import rainward.store.row.Columns;
import rainward.store.row.Trouble;
import rainward.weather.source.HostPauses;

/** Hosts that are left alone, kept so that a restart does not ask them at once. */
public final class PauseTable implements HostPauses {

    private final Handle handle;

    public PauseTable(Handle handle) {
        this.handle = handle;
    }

    @Override
    public Optional<Trouble> find(String host) {
        return handle.createQuery("select * from host_pause where host = :host")
                .bind("host", host)
                .map((row, context) -> new Trouble(
                        row.getString("host"),
                        row.getInt("failures"),
                        Columns.instant(row, "since"),
                        Columns.instant(row, "until_at"),
                        row.getString("words")))
                .findOne();
    }

    @Override
    public void keep(Trouble trouble) {
        handle.createUpdate("""
                        insert into host_pause (host, failures, since, until_at, words)
                        values (:host, :failures, :since, :until, :words)
                        on conflict (host) do update set failures = :failures, since = :since,
                          until_at = :until, words = :words
                        """)
                .bind("host", trouble.host())
                .bind("failures", trouble.failures())
                .bind("since", trouble.since().toEpochMilli())
                .bind("until", trouble.until().toEpochMilli())
                .bind("words", trouble.words())
                .execute();
    }

    @Override
    public void clear(String host) {
        handle.createUpdate("delete from host_pause where host = :host")
                .bind("host", host)
                .execute();
    }
}
