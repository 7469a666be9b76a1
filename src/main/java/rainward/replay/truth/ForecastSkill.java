package rainward.replay.truth;

import org.apache.commons.statistics.distribution.NormalDistribution;

import rainward.farm.Require;

/**
 * How much a forecast of rain knows at each lead: the correlation between what it sees and a
 * standard normal that stands for the period's rain, such that the chances it gives are reliable
 * and have the Brier skill of public forecasts.
 *
 * <p>Brier score of 12-hour probabilities in summer, about 0.10 on the first day rising to 0.18 on
 * the sixth (orders of magnitude, from memory; the services verify such forecasts to day 7, Lashley
 * et al. 2008), against 0.21 for the climate of a place where three periods in ten are wet. As a
 * skill score that is 0.52 falling to 0.14, in a straight line by day; beyond it 0.10.
 */
public final class ForecastSkill {

    private static final double FIRST_DAY = 0.52;
    private static final double SIXTH_DAY = 0.14;
    private static final double BEYOND = 0.10;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final int STEPS = 400;
    private static final int BISECTIONS = 40;

    private ForecastSkill() {}

    /**
     * Brier skill score against the climate at a lead.
     *
     * @param leadHours from issue to the middle of the period, 0 or more [h]
     * @return 0.10 to 0.52
     */
    public static double brierSkill(double leadHours) {
        Require.notNegative("leadHours", leadHours);
        double day = Math.max(1, Math.ceil(leadHours / 24));
        return day > 6 ? BEYOND : FIRST_DAY + (SIXTH_DAY - FIRST_DAY) * (day - 1) / 5;
    }

    /**
     * Correlation that gives a skill: reliable chances {@code P = Phi((m - t) / sqrt(1 - r^2))},
     * {@code m ~ N(0, r^2)}, have the skill {@code Var(P) / (p (1 - p))}.
     *
     * @param skill wanted, above 0 and below 1
     * @param wetChance of a period in the climate, above 0 and below 1
     * @return above 0 and below 1
     */
    public static double correlation(double skill, double wetChance) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            if (skillOf(middle, wetChance) < skill) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    static double skillOf(double correlation, double wetChance) {
        double threshold = NORMAL.inverseCumulativeProbability(1 - wetChance);
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            double seen = correlation * NORMAL.inverseCumulativeProbability((i + 0.5) / STEPS);
            double chance = chance(seen, correlation, threshold);
            sum += chance * chance;
        }
        return (sum / STEPS - wetChance * wetChance) / (wetChance * (1 - wetChance));
    }

    /** Chance that the period is wet, given what is seen of it. */
    static double chance(double seen, double correlation, double threshold) {
        double left = Math.sqrt(Math.max(1e-12, 1 - correlation * correlation));
        return NORMAL.cumulativeProbability((seen - threshold) / left);
    }
}
