package rainward.store.round;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import rainward.store.row.Json;

/** The newest of something by name, read whole: a forecast, what was decided about windows. */
public final class LastKnown {

    private final Handle handle;

    public LastKnown(Handle handle) {
        this.handle = handle;
    }

    /**
     * Replaces what is known under a name.
     *
     * @param name for instance {@code forecast/Mill Pond}
     * @param at as of when
     * @param value a record
     */
    public void put(String name, Instant at, Object value) {
        handle.createUpdate("""
                        insert into last_known (name, at, value) values (:name, :at, :value)
                        on conflict (name) do update set at = :at, value = :value
                        """)
                .bind("name", name)
                .bind("at", at.toEpochMilli())
                .bind("value", Json.write(value))
                .execute();
    }

    /** What is known under a name, if anything. */
    public <T> Optional<T> find(String name, Class<T> type) {
        return handle.createQuery("select value from last_known where name = :name")
                .bind("name", name)
                .mapTo(String.class)
                .findOne()
                .map(text -> Json.read(text, type));
    }
}
