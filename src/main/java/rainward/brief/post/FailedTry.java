package rainward.brief.post;

import java.time.Instant;
import java.util.Optional;

/**
 * A try that failed.
 *
 * @param at when
 * @param ending {@code WAITING} where it is tried again, else {@code REFUSED} or {@code GIVEN_UP}
 * @param why what the server or the network said
 * @param retryAt the next try, where there is one
 */
public record FailedTry(Instant at, OutboxRow.State ending, String why, Optional<Instant> retryAt) {

    /** Will be tried again. */
    public static FailedTry again(Instant at, String why, Instant retryAt) {
        return new FailedTry(at, OutboxRow.State.WAITING, why, Optional.of(retryAt));
    }

    /** Refused by the server for good. */
    public static FailedTry refused(Instant at, String why) {
        return new FailedTry(at, OutboxRow.State.REFUSED, why, Optional.empty());
    }

    /** Not taken in time. */
    public static FailedTry givenUp(Instant at, String why) {
        return new FailedTry(at, OutboxRow.State.GIVEN_UP, why, Optional.empty());
    }
}
