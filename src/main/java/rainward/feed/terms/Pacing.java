package rainward.feed.terms;

import java.time.Duration;
import java.util.SplittableRandom;

/** Waits between tries: full jitter, {@code random(0, min(60 s, 2 s x 2^n))}, from a given seed. */
public final class Pacing {

    private static final long LONGEST_MS = 60_000;
    private static final long FIRST_MS = 2_000;

    private final SplittableRandom random;
    private final Sleeper sleeper;

    /**
     * Sets the pace.
     *
     * @param seed of the jitter; different on each installation, so that they do not ask in step
     * @param sleeper waits, or pretends to
     */
    public Pacing(long seed, Sleeper sleeper) {
        this.random = new SplittableRandom(seed);
        this.sleeper = sleeper;
    }

    /** Real waits. */
    public static Pacing real(long seed) {
        return new Pacing(seed, wait -> Thread.sleep(wait.toMillis()));
    }

    /** Wait before try {@code n + 1}, counted from 0. */
    public synchronized Duration backOff(int n) {
        return Duration.ofMillis(random.nextLong(Math.min(LONGEST_MS, FIRST_MS << n)));
    }

    /** Five to ten seconds: what the US service asks for after its rate limit. */
    public synchronized Duration shortPause() {
        return Duration.ofMillis(5_000 + random.nextLong(5_000));
    }

    /** Waits; false where the thread was told to stop. */
    public boolean waited(Duration wait) {
        try {
            sleeper.sleep(wait);
            return true;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Lets time pass. */
    @FunctionalInterface
    public interface Sleeper {
        void sleep(Duration wait) throws InterruptedException;
    }
}
