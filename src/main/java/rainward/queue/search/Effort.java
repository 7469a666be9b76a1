package rainward.queue.search;

import java.util.function.DoubleSupplier;

/**
 * How long to search, and with which random numbers. The search itself reads no clock.
 *
 * @param seed of the random numbers
 * @param evaluations at most that many orders are tried
 * @param spentFraction share of some other budget that is used up, 0 to 1; the search ends at 1
 */
public record Effort(long seed, long evaluations, DoubleSupplier spentFraction) {

    private static final double LEAST_TRIES = 2;

    public Effort {
        if (evaluations < 1) {
            throw new IllegalArgumentException(
                    "evaluations is " + evaluations + ", must be 1 or more");
        }
    }

    /** A fixed number of tries: the same plan on every machine. */
    public static Effort tries(long seed, long evaluations) {
        return new Effort(seed, evaluations, () -> 0);
    }

    /** As many tries as another budget allows: time, or a person who waits. */
    public static Effort until(long seed, DoubleSupplier spentFraction) {
        return new Effort(seed, Long.MAX_VALUE, spentFraction);
    }

    /** Share of the effort that is used up after {@code done} tries, 0 to 1. */
    double spent(long done) {
        return Math.min(1, Math.max(done / (double) evaluations, spentFraction.getAsDouble()));
    }

    /**
     * Fewer tries where each takes longer than usual, so that the whole takes as long.
     *
     * @param times as long as usual; no more tries where it is less
     */
    public Effort forTriesThatCost(double times) {
        long fewer = (long) Math.max(LEAST_TRIES, evaluations / Math.max(1, times));
        return new Effort(seed, fewer, spentFraction);
    }

    /**
     * A share of this effort, from a part already spent to a later one, as an effort of its own.
     */
    public Effort slice(double from, double to, long newSeed) {
        long share = (long) Math.max(LEAST_TRIES, evaluations * (to - from));
        return new Effort(
                newSeed,
                share,
                () -> Math.max(0, (spentFraction.getAsDouble() - from) / (to - from)));
    }
}
