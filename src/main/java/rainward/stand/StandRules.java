package rainward.stand;

import rainward.farm.Require;

/**
 * Constants that no table gives: what is assumed, with its standing.
 *
 * @param grain how finely time and seed are cut
 * @param fieldFraction share of sound seed that makes plants where water and heat are right: the
 *     rest goes to insects, rot and clods; 60 to 80 % are reckoned with, common practice, no source
 * @param seedling growth and death of seedlings
 * @param damage by hard rain
 * @param checkDays from the first seeding hour to the judging of the stand, the same day for all
 *     seeding hours, so that a late hour gains nothing from a later judge [d]
 */
public record StandRules(
        Grain grain, double fieldFraction, Seedling seedling, Damage damage, double checkDays) {

    /** What the program uses. */
    public static final StandRules DEFAULT = new StandRules(
            new Grain(4, 4), 0.7, new Seedling(1.5, 6, 12, 0.02), new Damage(0.3, 0.03, 10), 21);

    public StandRules {
        Require.inRange("fieldFraction", fieldFraction, 0.05, 1);
        Require.positive("checkDays", checkDays);
    }

    /**
     * How finely time and seed are cut. Four hours still follow the course of a day; what they and
     * four classes cost in accuracy against one hour and many classes is measured in
     * {@code StandGrainTest}.
     *
     * @param stepHours length of a step, 1 to 6 [h]
     * @param seedClasses classes of equal share that stand for the spread of a seed lot
     */
    public record Grain(int stepHours, int seedClasses) {

        public Grain {
            Require.inRange("stepHours", stepHours, 1, 6);
            Require.inRange("seedClasses", seedClasses, 1, 200);
        }
    }

    /**
     * Seedlings. All four are chosen here, no source.
     *
     * @param shootStartCm growth before the shoot rises, as a length added to the depth [cm]
     * @param safeRootCm a root this deep under the surface has outrun the drying front [cm]
     * @param deadlyDryHours a seedling dies whose root tip is in soil below wilting point for that
     *     long; shorter spells only hold it up [h]
     * @param heatKillPerDegreeHour share of young seedlings killed by an hour one degree above the
     *     lethal surface temperature [1/(C h)]
     */
    public record Seedling(
            double shootStartCm,
            double safeRootCm,
            int deadlyDryHours,
            double heatKillPerDegreeHour) {

        public Seedling {
            Require.notNegative("shootStartCm", shootStartCm);
            Require.positive("safeRootCm", safeRootCm);
            Require.inRange("deadlyDryHours", deadlyDryHours, 1, 240);
            Require.inRange("heatKillPerDegreeHour", heatKillPerDegreeHour, 0, 1);
        }
    }

    /**
     * Hard rain. Chosen here, no source.
     *
     * @param rillShare share of the ground that soil loss comes from; the smaller, the deeper it
     *     cuts there
     * @param sealPerMjPerHa share of small seed sealed in under a silt loam by a megajoule of rain
     *     on a hectare [ha/MJ]
     * @param sealFromMmPerH rain below this 30-minute intensity seals nothing [mm/h]
     */
    public record Damage(double rillShare, double sealPerMjPerHa, double sealFromMmPerH) {

        public Damage {
            Require.inRange("rillShare", rillShare, 0.01, 1);
            Require.inRange("sealPerMjPerHa", sealPerMjPerHa, 0, 1);
            Require.notNegative("sealFromMmPerH", sealFromMmPerH);
        }
    }
}
