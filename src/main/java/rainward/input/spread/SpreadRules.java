package rainward.input.spread;

import java.util.List;
import java.util.Optional;
import rainward.farm.Require;
import rainward.input.fertilizer.Blender;
import rainward.input.fertilizer.Product;
import rainward.input.fertilizer.Targets;
import rainward.input.lime.FinenessSystem;
import rainward.input.lime.LimePlan;
import rainward.input.lime.LimeQuality;
import rainward.input.lime.LimeRule;

/**
 * Whose advice holds, and what can be had.
 *
 * @param lime how it is worked out
 * @param feed how fertilizer is
 * @param soilTestYears a test older than this is said to be old
 */
public record SpreadRules(Liming lime, Feeding feed, int soilTestYears) {

    /**
     * Lime.
     *
     * @param rule published recommendation
     * @param fineness sieve factors
     * @param limes that can be had; the first is spread
     * @param atHandKg of that one; infinite where it is bought [kg]
     * @param cap the most at a time
     * @param depthCm that it is worked in [cm]
     */
    public record Liming(
            LimeRule rule,
            FinenessSystem fineness,
            List<LimeQuality> limes,
            double atHandKg,
            LimePlan.Cap cap,
            double depthCm) {
        public Liming {
            limes = List.copyOf(limes);
            Require.that(atHandKg >= 0, "atHandKg is " + atHandKg + ", must be 0 or more");
        }

        Optional<LimeQuality> named(String name) {
            return limes.stream().filter(lime -> lime.name().equals(name)).findFirst();
        }
    }

    /**
     * Fertilizer.
     *
     * @param rules published recommendation
     * @param offers products that can be had
     * @param tolerance how near is near enough
     */
    public record Feeding(
            Targets.Rules rules, List<Product.Offer> offers, Blender.Tolerance tolerance) {
        public Feeding {
            offers = List.copyOf(offers);
        }
    }
}
