package rainward.replay.score;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * A mean with the range that 95 of 100 repetitions would leave it in, by the percentile bootstrap
 * (Efron and Tibshirani 1993, chapter 13): seasons drawn with replacement.
 *
 * @param mean of the seasons
 * @param low 2.5 percent of the resampled means are lower
 * @param high 2.5 percent of the resampled means are higher
 */
public record Interval(double mean, double low, double high) {

    private static final int RESAMPLES = 4000;
    private static final long SEED = 20_260_713;

    /** The interval of the mean of values, one a season; at least one. */
    public static Interval of(double[] values) {
        double mean = Arrays.stream(values).average().orElseThrow();
        SplittableRandom random = new SplittableRandom(SEED);
        double[] means = new double[RESAMPLES];
        for (int r = 0; r < RESAMPLES; r++) {
            double sum = 0;
            for (int i = 0; i < values.length; i++) {
                sum += values[random.nextInt(values.length)];
            }
            means[r] = sum / values.length;
        }
        Arrays.sort(means);
        return new Interval(
                mean,
                means[(int) (0.025 * RESAMPLES)],
                means[(int) Math.ceil(0.975 * RESAMPLES) - 1]);
    }
}
