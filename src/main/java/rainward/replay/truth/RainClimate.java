package rainward.replay.truth;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rainward.farm.Require;
import rainward.weather.rain.RainAmount;

/**
 * Rain of a period as a standard normal: below a threshold the period is dry, above it the amount
 * rises with the normal as the observed amounts do (normal quantile transform).
 *
 * @param wetChance of a period with at least 0.254 mm, 0 to 1
 * @param wetMm amounts of observed wet periods, rising; at least one [mm]
 */
record RainClimate(double wetChance, double[] wetMm) {

    private static final double EDGE = 1e-6;
    private static final double UNKNOWN_MM = 5;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    RainClimate {
        Require.inRange("wetChance", wetChance, 0.001, 0.95);
        Require.that(wetMm.length > 0, "no wet amount");
    }

    /** The climate that amounts of many periods make. */
    static RainClimate of(double[] amountsMm) {
        double[] wet = Arrays.stream(amountsMm)
                .filter(mm -> mm >= RainAmount.MEASURABLE_MM)
                .sorted()
                .toArray();
        double chance = (wet.length + 0.5) / (amountsMm.length + 1.0);
        return new RainClimate(
                Math.min(0.95, chance), wet.length == 0 ? new double[] {UNKNOWN_MM} : wet);
    }

    double meanWetMm() {
        return Arrays.stream(wetMm).average().orElseThrow();
    }

    double threshold() {
        return NORMAL.inverseCumulativeProbability(1 - wetChance);
    }

    /**
     * The normal that stands for an amount.
     *
     * @param amountMm of the period [mm]
     * @param dry 0 to 1: where a dry period lies among the dry ones
     */
    double latent(double amountMm, double dry) {
        return amountMm < RainAmount.MEASURABLE_MM
                ? normal(dry * (1 - wetChance))
                : normal(1 - wetChance + wetChance * below(amountMm));
    }

    /** Share of wet periods below an amount, the middle of equal ones. */
    private double below(double amountMm) {
        int at = Arrays.binarySearch(wetMm, amountMm);
        if (at >= 0) {
            return (at + 0.5) / wetMm.length;
        }
        int next = -at - 1;
        if (next == 0 || next == wetMm.length) {
            return next == 0 ? 0.5 / wetMm.length : 1 - 0.5 / wetMm.length;
        }
        double part = (amountMm - wetMm[next - 1]) / (wetMm[next] - wetMm[next - 1]);
        return (next - 0.5 + part) / wetMm.length;
    }

    /** The amount that a normal stands for [mm]. */
    double amountMm(double latent) {
        double among = (NORMAL.cumulativeProbability(latent) - (1 - wetChance)) / wetChance;
        if (among <= 0) {
            return 0;
        }
        double at = Math.max(0, Math.min(wetMm.length - 1.0, among * wetMm.length - 0.5));
        int low = (int) Math.min(Math.max(0, wetMm.length - 2), Math.floor(at));
        int high = Math.min(low + 1, wetMm.length - 1);
        return wetMm[low] + (at - low) * (wetMm[high] - wetMm[low]);
    }

    private static double normal(double share) {
        return NORMAL.inverseCumulativeProbability(Math.max(EDGE, Math.min(1 - EDGE, share)));
    }
}
