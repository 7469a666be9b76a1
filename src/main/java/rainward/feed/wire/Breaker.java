package rainward.feed.wire;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.feed.wire.Answer.Why;
import rainward.weather.source.HostPauses;
import rainward.weather.source.HostPauses.Trouble;
import rainward.weather.source.PullOutcome.Kind;

/**
 * Leaves hosts alone that are in trouble or turn us away: after five failed questions in a row for
 * 15 minutes, doubled with each further one to 6 hours; after 401 or 403 for 6 hours; after 429 as
 * long as asked, and at least as long as the service is known to want.
 */
final class Breaker {

    static final int FAILURES = 5;
    static final Duration FIRST_PAUSE = Duration.ofMinutes(15);
    static final Duration LONGEST_PAUSE = Duration.ofHours(6);

    private final HostPauses pauses;

    Breaker(HostPauses pauses) {
        this.pauses = pauses;
    }

    /** Why a host is not asked now; empty where it may be. */
    Optional<Why> barred(Ask ask, Instant now) {
        return pauses.find(ask.host())
                .filter(t -> t.pausedAt(now))
                .map(t -> Why.of(Kind.PAUSED, paused(t)).until(t.until()));
    }

    private static String paused(Trouble trouble) {
        return "is left alone until "
                + trouble.until().truncatedTo(ChronoUnit.SECONDS) + ": "
                + trouble.words();
    }

    /** True where the last question to the host failed: then one try has to do. */
    boolean inTrouble(Ask ask) {
        return pauses.find(ask.host()).isPresent();
    }

    void answered(Ask ask) {
        if (pauses.find(ask.host()).isPresent()) {
            pauses.clear(ask.host());
        }
    }

    /** Notes a failed question; returns the failure with the time from which to ask again. */
    Why failed(Ask ask, Why why, Round round) {
        Instant now = round.now();
        if (why.kind() == Kind.NOT_SERVED || why.kind() == Kind.REFUSED) {
            answered(ask);
            return why;
        }
        Optional<Trouble> before = pauses.find(ask.host());
        int failures = before.map(Trouble::failures).orElse(0) + 1;
        Instant since = before.map(Trouble::since).orElse(round.asOf());
        Optional<Instant> until = until(ask, why, failures, now);
        pauses.keep(new Trouble(ask.host(), failures, since, until.orElse(since), why.words()));
        return until.map(why::until).orElse(why);
    }

    private static Optional<Instant> until(Ask ask, Why why, int failures, Instant now) {
        Duration own = switch (why.kind()) {
            case BLOCKED -> LONGEST_PAUSE;
            case THROTTLED -> ask.service().manners().throttlePause();
            default -> circuit(failures);
        };
        Optional<Instant> ours = own.isZero() ? Optional.empty() : Optional.of(now.plus(own));
        return Stream.concat(why.retryAt().stream(), ours.stream()).max(Comparator.naturalOrder());
    }

    static Duration circuit(int failures) {
        if (failures < FAILURES) {
            return Duration.ZERO;
        }
        Duration pause = FIRST_PAUSE.multipliedBy(1L << Math.min(10, failures - FAILURES));
        return pause.compareTo(LONGEST_PAUSE) > 0 ? LONGEST_PAUSE : pause;
    }
}
