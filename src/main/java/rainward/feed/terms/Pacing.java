package rainward.feed.terms;

import java.time.Duration;
import java.util.SplittableRandom;

/** Waits between tries: full jitter, {@code random(0, min(60 s, 2 s x 2^n))}, from a given seed. */
public final class Pacing {

    private static final long LONGEST_MS = 60_000;
    private static final long FIRST_MS = 2_000;

    private final SplittableRandom random;
    private final Sleeper sleeper;
    private final boolean real;

    /**
     * Sets a pace that only pretends to wait, for a clock that runs ahead.
     *
     * @param seed of the jitter; different on each installation, so that they do not ask in step
     * @param sleeper hears of the waits
     */
    public Pacing(long seed, Sleeper sleeper) {
        this(seed, sleeper, false);
    }

    /**
     * Sets a pace.
     *
     * @param seed of the jitter; different on each installation, so that they do not ask in step
     * @param sleeper waits, or pretends to
     * @param real true where time passes as on any clock
     */
    public Pacing(long seed, Sleeper sleeper, boolean real) {
        this.random = new SplittableRandom(seed);
        this.sleeper = sleeper;
        this.real = real;
    }

    /** Real waits. */
    public static Pacing real(long seed) {
        return new Pacing(seed, wait -> Thread.sleep(wait.toMillis()), true);
    }

    /** True where time passes as on any clock, so that a service's clock can be held against it. */
    public boolean isReal() {
        return real;
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
