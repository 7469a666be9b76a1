package rainward.weather.source;

import java.time.Instant;
import rainward.farm.Require;

/**
 * How a source does, for the brief, the board and {@code check}.
 *
 * @param source short name of the service
 * @param state how it does
 * @param since when it came into that state
 * @param words one sentence for the user
 */
public record SourceStatus(String source, State state, Instant since, String words) {

    public SourceStatus {
        Require.named("source", source);
    }

    /** States of a source. */
    public enum State {
        /** Answers, and its forecast is fresh. */
        OK,
        /** Answers, but its forecast is more than 12 hours old. */
        LATE,
        /** Its newest forecast is more than 24 hours old. */
        STALE,
        /** Does not answer, or not with data. */
        DOWN,
        /** Turns us away. */
        BLOCKED,
        /** Switched off by its terms or the settings. */
        DISABLED
    }
}
