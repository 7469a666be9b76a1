package rainward.input.seed;

import java.util.Optional;
import rainward.farm.Require;

/**
 * Seed of one species in the shed.
 *
 * @param species its name
 * @param tag if somebody has read it
 * @param bagKg weight of a whole bag [kg]
 * @param wholeBags bags not yet opened
 * @param openedKg loose seed in opened bags [kg]
 */
public record SeedLot(
        String species, Optional<SeedTag> tag, double bagKg, int wholeBags, double openedKg) {

    public SeedLot {
        Require.named("species", species);
        Require.positive("bagKg", bagKg);
        Require.notNegative("wholeBags", wholeBags);
        Require.notNegative("openedKg", openedKg);
    }

    public double onHandKg() {
        return wholeBags * bagKg + openedKg;
    }

    /**
     * What to load for a weight of seed: opened bags first, then whole ones.
     *
     * @param bulkKg seed as it comes out of the bag [kg]
     */
    public Pull pull(double bulkKg) {
        Require.notNegative("bulkKg", bulkKg);
        double looseKg = Math.min(openedKg, bulkKg);
        // A bag is not opened for the rounding of a sum.
        int bags = (int) Math.ceil((bulkKg - looseKg) / bagKg - 1e-9);
        int carried = Math.min(bags, wholeBags);
        return new Pull(
                carried,
                looseKg,
                Math.max(0, looseKg + carried * bagKg - bulkKg),
                Math.max(0, bulkKg - onHandKg()));
    }

    /**
     * Bags on the truck.
     *
     * @param wholeBags to load
     * @param openedKg to load from opened bags [kg]
     * @param comesBackKg loose seed that comes home [kg]
     * @param shortKg what the shed does not have [kg]
     */
    public record Pull(int wholeBags, double openedKg, double comesBackKg, double shortKg) {}
}
