package rainward.queue.sample;

import java.util.SplittableRandom;

/**
 * How far forecasts are off, storm by storm, as shares of the most that they may be. A forecast
 * keeps most of the error of the one before: both rest on nearly the same observations.
 */
final class ForecastErrors {

    /** Of an error that the forecast of twelve hours later still has; chosen by us, no source. */
    private static final double SHARED = 0.9;

    private static final double FRESH = Math.sqrt(1 - SHARED * SHARED);

    private final SplittableRandom random;
    private final double[] time;
    private final double[] chance;

    ForecastErrors(int storms, SplittableRandom random) {
        this.random = random;
        time = random.doubles(storms, -1, 1).toArray();
        chance = random.doubles(storms, -1, 1).toArray();
    }

    /** Twelve hours later; the spread of errors stays as it is. */
    void goOn() {
        for (int i = 0; i < time.length; i++) {
            time[i] = SHARED * time[i] + FRESH * random.nextDouble(-1, 1);
            chance[i] = SHARED * chance[i] + FRESH * random.nextDouble(-1, 1);
        }
    }

    double timeShare(int storm) {
        return Math.max(-1, Math.min(1, time[storm]));
    }

    double chanceShare(int storm) {
        return Math.max(-1, Math.min(1, chance[storm]));
    }
}
