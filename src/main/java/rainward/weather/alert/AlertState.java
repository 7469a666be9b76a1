package rainward.weather.alert;

import java.time.Instant;

/**
 * What is known of one public alert.
 *
 * @param alert its newest message
 * @param state where it stands
 * @param since when it came into that state
 */
public record AlertState(PublicAlert alert, State state, Instant since) {

    /** States of an alert. */
    public enum State {
        /** In force or announced. */
        ACTIVE,
        /** A later message stands in for it. */
        REPLACED,
        /** Cancelled, past its own end, or gone from two good answers in a row. */
        ENDED,
        /** The feed is down: nobody knows; it is not over because we cannot see it. */
        UNKNOWN
    }
}
