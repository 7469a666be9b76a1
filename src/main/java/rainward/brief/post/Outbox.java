package rainward.brief.post;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * Messages that wait to go out, as the postman sees them. A message is put in by whoever keeps the
 * outbox, in the same transaction as what caused it; a second message of the same key is ignored.
 */
public interface Outbox {

    /**
     * Takes the oldest waiting message that is due and sets its next try to {@code now + hold}, so
     * that nobody else takes it meanwhile, and so that it comes back by itself if the process dies
     * before it says what became of it. A message waits as long as an earlier one to the same
     * recipient does: they arrive in the order they were written. Only one whose own time has not
     * come yet, and which was never tried, holds nothing up.
     *
     * @param now due are messages whose next try is at or before it
     * @param hold how long the message is kept from others
     */
    Optional<OutboxRow> claim(Instant now, Duration hold);

    /** Records that the server has taken the message. */
    void markSent(long id, Instant at, String serverSaid);

    /** Records a try that failed, for now or for good. */
    void markFailed(long id, FailedTry failure);
}
