package rainward.weather.source;

import java.time.Instant;
import java.util.Optional;
import rainward.farm.Require;

/**
 * Which hosts are left alone, and until when; kept over restarts so that a restart asks nothing.
 */
public interface HostPauses {

    /** What is known of a host's failures, if anything. */
    Optional<Trouble> find(String host);

    /** Replaces what is known of its host. */
    void keep(Trouble trouble);

    /** Forgets a host that answers again. */
    void clear(String host);

    /**
     * A host in trouble.
     *
     * @param host a service at a host and port
     * @param failures in a row
     * @param since the first of them
     * @param until not asked before; equal to {@code since} where it may be asked
     * @param words why, for the user
     */
    record Trouble(String host, int failures, Instant since, Instant until, String words) {

        public Trouble {
            Require.named("host", host);
        }

        public boolean pausedAt(Instant asOf) {
            return asOf.isBefore(until);
        }
    }
}
