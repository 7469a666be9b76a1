package rainward.stand;

import rainward.farm.Mix;
import rainward.farm.SeedingMethod;

/** Where a method leaves the seed and how well it touches the soil. */
public final class SeedPlacement {
    /** Thrown seed that is dragged in lies this deep at most [cm]; common practice, no source. */
    private static final double BROADCAST_DEPTH_CM = 0.5;

    /** Rollers press seed no deeper than half an inch [cm]; common practice, no source. */
    private static final double ROLLED_DEPTH_CM = 1.3;

    /**
     * Share of thrown seed that finds soil: published rates for rape and kale, 3 lb/ac drilled
     * against 5 broadcast (oregon-fs287).
     */
    private static final double BROADCAST_PLACED_FRACTION = 0.6;

    /** What a loose bed leaves of the contact; chosen here, no source. */
    private static final double LOOSE_CONTACT = 0.8;

    private SeedPlacement() {}

    /** Depth of the seed [cm]. */
    public static double depthCm(Mix mix, SeedingMethod method) {
        return switch (method) {
            case BROADCAST -> Math.min(BROADCAST_DEPTH_CM, mix.sowingDepthCm());
            case ROLLED -> Math.min(ROLLED_DEPTH_CM, mix.sowingDepthCm());
            case DRILLED -> mix.sowingDepthCm();
        };
    }

    /** Share of the seed that lies where it can grow, 0 to 1. */
    public static double placedFraction(SeedingMethod method) {
        return method == SeedingMethod.BROADCAST ? BROADCAST_PLACED_FRACTION : 1;
    }

    /**
     * Contact of seed and soil, 0 to 1: the seed feels the soil's potential divided by it, since a
     * poorly wetted seed takes water up as from drier soil. Little matters in moist soil, much in
     * drying soil. Values chosen here, no source.
     */
    public static double contact(SeedingConditions conditions) {
        double bed = conditions.firmed() ? 1 : LOOSE_CONTACT;
        return switch (conditions.method()) {
            case ROLLED -> 0.8;
            case DRILLED -> 0.75 * bed;
            case BROADCAST -> 0.5 * bed;
        };
    }
}
