package rainward.input.check;

import java.util.Map;
import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.farm.Require;

/** How many live seeds a mix has on the ground, and what a count of plants is against it. */
public final class SownSeed {
    private static final double M2_PER_HA = 10_000;

    private SownSeed() {}

    /** Live seeds of a component where it is drilled, rate x seed count [1/m2]. */
    public static double drilledPerM2(MixComponent component) {
        return component.drilledKgPerHa() * component.species().seedsPerKg() / M2_PER_HA;
    }

    /**
     * Stand by component: {@code sum(weight x plants / drilled seed)}, the measure that the chance
     * at seeding is given in.
     *
     * @param plantsPerM2 by species; one that is missing has none [1/m2]
     * @return 0 and more; more than 1 only where a rate was heavier than the drilled one
     */
    public static double stand(Mix mix, Map<String, Double> plantsPerM2) {
        double sum = 0;
        double weights = 0;
        for (MixComponent component : mix.components()) {
            double plants = plantsPerM2.getOrDefault(component.species().name(), 0.0);
            Require.notNegative("plantsPerM2", plants);
            sum += component.standWeight() * plants / drilledPerM2(component);
            weights += component.standWeight();
        }
        return sum / weights;
    }

    /**
     * Stand where seedlings are not told apart: all plants over all drilled seed.
     *
     * @param plantsPerM2 of any species [1/m2]
     */
    public static double standOfAll(Mix mix, double plantsPerM2) {
        Require.notNegative("plantsPerM2", plantsPerM2);
        return plantsPerM2
                / mix.components().stream().mapToDouble(SownSeed::drilledPerM2).sum();
    }
}
