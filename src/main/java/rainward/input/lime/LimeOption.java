package rainward.input.lime;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rainward.farm.Require;

/**
 * One lime that does a given work, with its cost: pellets beside ground lime. Pellets work by their
 * fineness and CCE like any lime, no more (Mullen, Ohio State University).
 *
 * @param lime which
 * @param rateKgPerHa that does the work [kg/ha]
 * @param usdPerHa what it costs [USD/ha]
 */
public record LimeOption(LimeQuality lime, double rateKgPerHa, double usdPerHa) {

    /**
     * The rate of a lime that does the work of an amount of pure, fine calcium carbonate.
     *
     * @return empty where its sieve report lacks a sieve of the system
     */
    public static Optional<LimeOption> of(
            LimeQuality lime, FinenessSystem system, double effectiveKgPerHa) {
        Require.notNegative("effectiveKgPerHa", effectiveKgPerHa);
        return lime.effectiveFraction(system)
                .filter(fraction -> fraction > 0)
                .map(fraction -> effectiveKgPerHa / fraction)
                .map(rate -> new LimeOption(lime, rate, rate * lime.usdPerKg()));
    }

    /** All limes whose quality is known, the cheapest for the same work first. */
    public static List<LimeOption> byCost(
            List<LimeQuality> limes, FinenessSystem system, double effectiveKgPerHa) {
        return limes.stream()
                .flatMap(lime -> of(lime, system, effectiveKgPerHa).stream())
                .sorted(Comparator.comparingDouble(LimeOption::usdPerHa))
                .toList();
    }
}
