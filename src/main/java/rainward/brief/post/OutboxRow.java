package rainward.brief.post;

import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * A message in the outbox, with what has become of it so far.
 *
 * @param id grows with the order of writing
 * @param message as it goes out
 * @param progress so far
 */
public record OutboxRow(long id, Outgoing message, Progress progress) {

    /** Where a message stands. */
    public enum State {
        /** To be tried, for the first time or again. */
        WAITING,
        /** The server has taken it. */
        SENT,
        /** The server will never take it (5xx). */
        REFUSED,
        /** No server took it in time. */
        GIVEN_UP,
        /** Taken out by a person. */
        DROPPED;

        /** As people read it. */
        public String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * What has become of it.
     *
     * @param state where it stands
     * @param tries claims so far, the present one counted in
     * @param nextTryAt while waiting; during a try, the end of the hold
     * @param endedAt when it left the state of waiting
     * @param lastWords what the server or the network said last; empty before the first try
     */
    public record Progress(
            State state,
            int tries,
            Optional<Instant> nextTryAt,
            Optional<Instant> endedAt,
            String lastWords) {}
}
