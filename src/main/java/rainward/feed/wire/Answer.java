package rainward.feed.wire;

import java.time.Instant;
import java.util.Optional;
import rainward.weather.source.LastGoodCopies.Copy;
import rainward.weather.source.PullOutcome.Kind;

/** What came of one question. */
public sealed interface Answer<T> {

    /** How an answer came to be known. */
    enum How {
        /** Over the wire, in full. */
        NEW,
        /** The service said that the kept copy still holds. */
        CONFIRMED,
        /** Not asked: the kept copy is fresh. */
        KEPT
    }

    /**
     * A readable answer.
     *
     * @param value as read
     * @param copy what it was read from
     * @param how it came to be known
     */
    record Given<T>(T value, Copy copy, How how) implements Answer<T> {}

    /**
     * No readable answer.
     *
     * @param why the failure
     * @param kept the last good answer, if there is one
     */
    record Refused<T>(Why why, Optional<Given<T>> kept) implements Answer<T> {}

    /**
     * A failure.
     *
     * @param kind what sort
     * @param words one sentence for the user
     * @param status HTTP status, 0 where there was none
     * @param retryAt when to ask again, where that is known
     */
    record Why(Kind kind, String words, int status, Optional<Instant> retryAt) {

        public static Why of(Kind kind, String words) {
            return new Why(kind, words, 0, Optional.empty());
        }

        Why until(Instant at) {
            return new Why(kind, words, status, Optional.of(at));
        }

        Why because(String other) {
            return new Why(kind, other, status, retryAt);
        }
    }
}
