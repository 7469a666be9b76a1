package rainward.weather.marginal;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.statistics.distribution.GammaDistribution;

/**
 * Amounts of a wet period over equally likely traces, from wettest to least wet: 0.254 mm and a
 * gamma distribution of shape 0.75 above it. Each trace gets the mean of its own slice of the
 * distribution, so that few traces still add up to the exact mean.
 *
 * <p>Gamma is the customary choice for wet amounts; Wilks 1999 (Agric. For. Meteorol. 93:153-169)
 * finds a mixed exponential better for days of which nothing is forecast. Shape 0.75 is from memory
 * (0.7 to 0.9, the order of fits to daily rain in the eastern USA): no published value was at hand.
 * It matters little: an exponential in its place moves the chance that a wet period beats a fifth
 * to twice its mean by less than 0.07, which {@code WetAmountsTest} holds.
 */
public final class WetAmounts {

    static final double SHAPE = 0.75;

    /** Steps of the table of the Lorenz curve: a slice of 1 in 10,000 still spans some. */
    private static final int STEPS = 2048;

    /** The table ends where less than 1e-7 of the mean is left, in multiples of the mean. */
    private static final double END = 24;

    private final double[] below = new double[STEPS + 1];
    private final double[] share = new double[STEPS + 1];
    private final Map<Integer, double[]> slices = new HashMap<>();

    public WetAmounts() {
        this(SHAPE);
    }

    WetAmounts(double shape) {
        GammaDistribution amounts = GammaDistribution.of(shape, 1 / shape);
        GammaDistribution weighted = GammaDistribution.of(shape + 1, 1 / shape);
        for (int i = 1; i < STEPS; i++) {
            double root = i / (double) STEPS;
            double multiple = END * root * root * root;
            below[i] = amounts.cumulativeProbability(multiple);
            share[i] = weighted.cumulativeProbability(multiple);
        }
        below[STEPS] = 1;
        share[STEPS] = 1;
    }

    /**
     * Amounts relative to their mean above the threshold, wettest first; they average 1.
     *
     * @param wet number of wet traces, at least 1
     */
    public double[] multiples(int wet) {
        return slices.computeIfAbsent(wet, this::slice);
    }

    private double[] slice(int wet) {
        double[] made = new double[wet];
        double upper = 1;
        for (int rank = 0; rank < wet; rank++) {
            double lower = lorenz((wet - 1 - rank) / (double) wet);
            made[rank] = (upper - lower) * wet;
            upper = lower;
        }
        return made;
    }

    /** Share of all rain that falls in the least wet {@code fraction} of cases. */
    double lorenz(double fraction) {
        int at = Arrays.binarySearch(below, fraction);
        if (at >= 0) {
            return share[at];
        }
        int high = -at - 1;
        double along = (fraction - below[high - 1]) / (below[high] - below[high - 1]);
        return share[high - 1] + along * (share[high] - share[high - 1]);
    }
}
