package rainward.input.seed;

import java.util.Map;
import java.util.OptionalDouble;

/**
 * Weight of a volume of seed in bulk, by species.
 *
 * @param kgPerM3 by species [kg/m3]; {@code shared/bulk-densities.csv}
 */
public record BulkDensity(Map<String, Double> kgPerM3) {

    public BulkDensity {
        kgPerM3 = Map.copyOf(kgPerM3);
    }

    /**
     * Density of a mix as volumes add up: {@code 1 / sum(share / density)}. Small seed creeps
     * between large seed, so a real box holds this or a little more.
     *
     * @param need components with their weight out of the bag
     * @return [kg/m3]; empty where a density or a tag is not known
     */
    public OptionalDouble of(SeedNeed need) {
        double volumeM3 = 0;
        for (SeedNeed.Part part : need.parts()) {
            Double density = kgPerM3.get(part.species());
            if (density == null || part.bulkKg().isEmpty()) {
                return OptionalDouble.empty();
            }
            volumeM3 += part.bulkKg().getAsDouble() / density;
        }
        return OptionalDouble.of(need.bulkKg().orElseThrow() / volumeM3);
    }
}
