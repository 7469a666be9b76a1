package rainward.input.fertilizer;

import java.time.LocalDate;
import java.util.List;
import rainward.farm.Require;

/**
 * What a harvest takes from the field.
 *
 * @param crop and part, for instance {@code corn grain}
 * @param phosphateFraction P2O5 by weight of the harvest as sold
 * @param potashFraction K2O by weight of the harvest as sold
 */
public record CropRemoval(String crop, double phosphateFraction, double potashFraction) {

    public CropRemoval {
        Require.named("crop", crop);
        Require.inRange("phosphateFraction", phosphateFraction, 0, 0.2);
        Require.inRange("potashFraction", potashFraction, 0, 0.2);
    }

    /** Phosphate and potash carried off by a yield [kg/ha]; nitrogen is not replaced this way. */
    public Nutrients of(double yieldKgPerHa) {
        Require.notNegative("yieldKgPerHa", yieldKgPerHa);
        return new Nutrients(0, yieldKgPerHa * phosphateFraction, yieldKgPerHa * potashFraction);
    }

    /**
     * A harvest of a field.
     *
     * @param removal by crop and part
     * @param on day of the harvest
     * @param yieldKgPerHa as sold [kg/ha]
     */
    public record Harvest(CropRemoval removal, LocalDate on, double yieldKgPerHa) {

        public Harvest {
            Require.notNegative("yieldKgPerHa", yieldKgPerHa);
        }
    }

    /** All that was carried off after a day, for instance that of the last soil test. */
    public static Nutrients since(LocalDate day, List<Harvest> harvests) {
        return harvests.stream()
                .filter(harvest -> harvest.on().isAfter(day))
                .map(harvest -> harvest.removal().of(harvest.yieldKgPerHa()))
                .reduce(Nutrients.NONE, Nutrients::plus);
    }
}
