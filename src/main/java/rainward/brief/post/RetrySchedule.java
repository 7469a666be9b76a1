package rainward.brief.post;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.farm.Require;

/**
 * When a message that failed for now is tried again: soon at first, then ever more seldom, never
 * after it is given up. The waits are common practice of mail servers, no source.
 *
 * @param waits after the first try, the second and so on; the last one repeats
 */
public record RetrySchedule(List<Duration> waits) {

    /** One minute to one hour: a server that is restarted, then one that is down. */
    public static final RetrySchedule USUAL = new RetrySchedule(List.of(
            Duration.ofMinutes(1),
            Duration.ofMinutes(3),
            Duration.ofMinutes(5),
            Duration.ofMinutes(10),
            Duration.ofMinutes(20),
            Duration.ofMinutes(30),
            Duration.ofHours(1)));

    /** How long a message is tried at all. */
    public static final Duration TRIED_FOR = Duration.ofHours(24);

    public RetrySchedule {
        waits = List.copyOf(waits);
        Require.that(!waits.isEmpty(), "a retry schedule needs at least one wait");
    }

    /**
     * The next try.
     *
     * @param now when this one failed
     * @param tries so far, this one counted in
     * @param askedWait what the server asked to wait, if it said so
     * @param giveUpAt end of all tries
     * @return empty where it would come at or after the end
     */
    public Optional<Instant> next(
            Instant now, int tries, Optional<Duration> askedWait, Instant giveUpAt) {
        Duration usual = waits.get(Math.min(Math.max(tries, 1), waits.size()) - 1);
        Duration wait = askedWait.filter(asked -> asked.compareTo(usual) > 0).orElse(usual);
        return Optional.of(now.plus(wait)).filter(next -> next.isBefore(giveUpAt));
    }
}
