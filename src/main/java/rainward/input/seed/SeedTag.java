package rainward.input.seed;

import rainward.farm.Require;

/**
 * What the tag on a bag says of the seed inside.
 *
 * @param lot its number
 * @param purityFraction share of pure seed by weight, 0 to 1
 * @param germination share of pure seed that is alive
 * @param coating what is stuck on the seed
 */
public record SeedTag(String lot, double purityFraction, Germination germination, Coating coating) {

    public SeedTag {
        Require.named("lot", lot);
        Require.inRange("purityFraction", purityFraction, 0.01, 1);
        Require.that(
                !coating.inPurity() || purityFraction + coating.coatFraction() <= 1 + 1e-9,
                "lot " + lot + ": purity " + purityFraction + " and coating "
                        + coating.coatFraction()
                        + " are more than the bag; purity must be given without the coat");
    }

    /** A tag of bare seed without hard or dormant seed. */
    public static SeedTag bare(String lot, double purityFraction, double germinationFraction) {
        return new SeedTag(
                lot, purityFraction, new Germination(germinationFraction, 0), Coating.NONE);
    }

    /**
     * Pure live seed, purity x germination, less the coat once: share of the weight of the bag,
     * above 0, to 1.
     */
    public double pureLiveFraction() {
        double bareFraction = coating.inPurity() ? 1 : 1 - coating.coatFraction();
        return purityFraction * germination.aliveFraction() * bareFraction;
    }

    /**
     * Weight out of the bag that holds so much pure live seed.
     *
     * @param liveKg pure live seed [kg]
     * @return seed as it comes out of the bag [kg]
     */
    public double bulkKg(double liveKg) {
        return liveKg / pureLiveFraction();
    }

    /**
     * Seed that is alive; hard and dormant seed counts (University of Georgia, EC3).
     *
     * @param soonFraction germinated in the test, 0 to 1
     * @param dormantFraction hard or dormant, 0 to 1
     */
    public record Germination(double soonFraction, double dormantFraction) {

        public Germination {
            Require.inRange("soonFraction", soonFraction, 0, 1);
            Require.inRange("dormantFraction", dormantFraction, 0, 1);
            Require.inRange("germination", soonFraction + dormantFraction, 0.01, 1 + 1e-9);
        }

        double aliveFraction() {
            return Math.min(1, soonFraction + dormantFraction);
        }
    }

    /**
     * Coat or inoculant on the seed, by weight of the bag.
     *
     * @param coatFraction share of the bag, 0 to 0.95
     * @param inPurity true where the tag's purity is a share of the whole bag and so leaves the
     *     coat out already; it is then not taken off again
     */
    public record Coating(double coatFraction, boolean inPurity) {
        public static final Coating NONE = new Coating(0, true);

        public Coating {
            Require.inRange("coatFraction", coatFraction, 0, 0.95);
        }
    }
}
