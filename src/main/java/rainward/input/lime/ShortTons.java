package rainward.input.lime;

import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** US publications give lime in short tons an acre. */
final class ShortTons {
    private static final double LB_PER_TON = 2_000;

    private ShortTons() {}

    static double kgPerHa(double tonsPerAcre) {
        return UnitSystem.US_CUSTOMARY.inside(Quantity.RATE, tonsPerAcre * LB_PER_TON);
    }
}
