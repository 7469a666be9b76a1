package rainward.input.record;

import java.util.List;
import java.util.Optional;
import rainward.farm.Require;

/**
 * What was really worked and really used in one go.
 *
 * @param stage of the recipe
 * @param areaHa worked [ha]
 * @param used what went on or into the ground
 * @param machine that did it, if known
 */
public record Applied(String stage, double areaHa, List<Used> used, Optional<String> machine) {

    public Applied {
        Require.named("stage", stage);
        Require.positive("areaHa", areaHa);
        used = List.copyOf(used);
    }

    /**
     * A weight of something that left the shed.
     *
     * @param item species or product
     * @param massKg of it [kg]
     */
    public record Used(String item, double massKg) {

        public Used {
            Require.named("item", item);
            Require.notNegative("massKg", massKg);
        }
    }

    /** Weight of one item on the ground worked [kg/ha]. */
    public double rateKgPerHa(String item) {
        return used.stream()
                        .filter(u -> u.item().equals(item))
                        .mapToDouble(Used::massKg)
                        .sum()
                / areaHa;
    }
}
