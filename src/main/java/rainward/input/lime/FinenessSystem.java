package rainward.input.lime;

import java.util.Map;
import java.util.Optional;
import rainward.farm.Require;
import rainward.input.Gap;

/**
 * How a region counts the fineness of lime: {@code sum(weight x share passing)} over its sieves.
 * Rules by sieve interval are the same sum in other words: 0.40 x (p20 - p60) + 0.80 x (p60 - p100)
 * + 1.00 x p100 is 0.40 p20 + 0.40 p60 + 0.20 p100.
 *
 * @param name for instance {@code new york}
 * @param weights by mesh; together 1
 */
public record FinenessSystem(String name, Map<Integer, Double> weights) {

    public FinenessSystem {
        Require.named("fineness system", name);
        weights = Map.copyOf(weights);
        double sum = weights.values().stream().mapToDouble(Double::doubleValue).sum();
        Require.inRange(name + ": sum of weights", sum, 1 - 1e-9, 1 + 1e-9);
        weights.forEach((mesh, weight) -> Require.inRange(mesh + " mesh weight", weight, 0, 1));
    }

    /**
     * Share of the lime that is fine enough to work; all of it where a sieve passes all.
     *
     * @param passing share passing, by mesh, 0 to 1
     * @return 0 to 1; empty where the report lacks a sieve of this system
     */
    public Optional<Double> finenessFraction(Map<Integer, Double> passing) {
        double sum = 0;
        for (Map.Entry<Integer, Double> sieve : weights.entrySet()) {
            Double share = passing.get(sieve.getKey());
            if (share == null) {
                return Optional.empty();
            }
            sum += sieve.getValue() * share;
        }
        return Optional.of(Math.min(1, sum));
    }

    /** What to ask for where the report lacks a sieve. */
    Gap gap(String lime) {
        return new Gap(
                lime,
                "share passing the " + weights.keySet().stream().sorted().toList()
                        + " mesh sieves is not known",
                "ask the quarry for its sieve report");
    }
}
