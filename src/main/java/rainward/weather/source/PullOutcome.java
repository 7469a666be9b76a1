package rainward.weather.source;

import java.time.Instant;
import java.util.Optional;

/** What came of asking for a forecast. */
public sealed interface PullOutcome {

    /**
     * The best series there is after this pull: the new one, the confirmed one or the last good.
     */
    Optional<ForecastSeries> series();

    /**
     * A forecast that had not been seen before.
     *
     * @param forecast the new one
     */
    record Fetched(ForecastSeries forecast) implements PullOutcome {

        @Override
        public Optional<ForecastSeries> series() {
            return Optional.of(forecast);
        }
    }

    /**
     * The kept forecast still holds: the service said so, or its expiry has not passed.
     *
     * @param forecast the kept one, clipped to the present
     * @param confirmedAt when the service last said so
     */
    record Unchanged(ForecastSeries forecast, Instant confirmedAt) implements PullOutcome {

        @Override
        public Optional<ForecastSeries> series() {
            return Optional.of(forecast);
        }
    }

    /**
     * No forecast from this pull.
     *
     * @param kind what sort of failure
     * @param words one sentence for the user: who failed, how, what happens next
     * @param retryAt when it makes sense to ask again, where that is known
     * @param lastGood the forecast kept from before, if it still reaches past the present
     */
    record Failed(
            Kind kind, String words, Optional<Instant> retryAt, Optional<ForecastSeries> lastGood)
            implements PullOutcome {

        @Override
        public Optional<ForecastSeries> series() {
            return lastGood;
        }
    }

    /** Sorts of failure; each asks for something else from the user or the schedule. */
    enum Kind {
        /** No connection, no such host, cut off or out of time. */
        UNREACHABLE,
        /** Connected, but the other side cannot prove who it is. */
        UNTRUSTED,
        /** The service says that it is the one in trouble (5xx). */
        SERVER_FAULT,
        /** Asked too often (429). */
        THROTTLED,
        /** Turned away (401, 403): identification, key or ban. */
        BLOCKED,
        /** The place is outside what the service covers (404, 422). */
        NOT_SERVED,
        /** The service does not accept the question (400). */
        REFUSED,
        /** An answer came, but not one that can be read. */
        UNREADABLE,
        /** An answer came, but an old one. */
        STALE,
        /** Not asked: left alone until a known time. */
        PAUSED,
        /** Not asked: switched off by its terms or the settings. */
        DISABLED
    }
}
