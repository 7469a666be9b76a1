package rainward.input.lime;

import java.util.Map;
import java.util.Optional;
import rainward.farm.Require;

/**
 * A lime as its dealer reports it.
 *
 * @param name what the crew calls it
 * @param cceFraction calcium carbonate equivalent, 1 for pure calcium carbonate, to 1.8 for quick
 *     and hydrated lime
 * @param moistureFraction water in it, 0 to 0.5
 * @param passing share passing a sieve, by mesh, 0 to 1
 * @param usdPerKg spread or delivered, as both limes compared are [USD/kg]
 */
public record LimeQuality(
        String name,
        double cceFraction,
        double moistureFraction,
        Map<Integer, Double> passing,
        double usdPerKg) {

    public LimeQuality {
        Require.named("lime", name);
        Require.inRange("cceFraction", cceFraction, 0.1, 1.8);
        Require.inRange("moistureFraction", moistureFraction, 0, 0.5);
        passing = Map.copyOf(passing);
        passing.forEach((mesh, share) -> Require.inRange(mesh + " mesh passing", share, 0, 1));
        Require.notNegative("usdPerKg", usdPerKg);
    }

    /** Neutralizing share of the lime as it is spread: CCE x fineness x (1 - moisture). */
    public Optional<Double> effectiveFraction(FinenessSystem system) {
        return system.finenessFraction(passing)
                .map(fineness -> cceFraction * fineness * (1 - moistureFraction));
    }
}
