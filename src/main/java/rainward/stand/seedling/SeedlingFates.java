package rainward.stand.seedling;

import rainward.farm.Species;
import rainward.stand.StandRules;
import rainward.stand.bed.StepGrid;
import rainward.stand.bed.TraceColumns;

/**
 * What becomes of a seed by the step in which it germinates, on one trace: it comes up, dries out,
 * is scorched, or is still under way at the end. Nothing here depends on the hour of seeding, so
 * one pass serves all of them.
 *
 * <p>The root tip lies at {@code depth + growth / rootCdPerCm}. A seedling dies in the hour that
 * ends a spell of {@code deadlyDryHours} with the drying front below the tip, unless it is up and
 * its root has reached the safe depth before. But for seeds killed at once, the hour of death only
 * moves back as the hour of germination moves back: all fates are found in linear time.
 */
public final class SeedlingFates {
    /**
     * Entries a row: plants, plants x worth, plants x step of emergence, scorched, dead, under way,
     * waiting; eight lie well in memory.
     */
    public static final int STRIDE = 8;

    /** Rows of seed that has not germinated at the end: in moist soil, and in dry soil. */
    public static final int UNDER_WAY = 0;

    public static final int WAITING = 1;

    /** Row of seed that germinates in step 0; those of the other steps follow. */
    public static final int GERMINATED = 2;

    /**
     * Surface heat counts from so long before a seedling is up, when its hook nears the top [h].
     */
    private static final int HEAT_HOURS_BEFORE = 6;

    /** Surface heat counts until the stem has hardened; chosen here, no source [h]. */
    private static final int HEAT_HOURS_AFTER = 72;

    /** By row, {@link #STRIDE} entries each. */
    public final double[] fates;

    private final int steps;
    private final int deadlySteps;
    private final int heatStepsBefore;
    private final int heatStepsAfter;
    private final double depthCm;
    private final double rootCdPerCm;
    private final double upCd;
    private final double safeCd;
    private final double[] reachCd;
    private final double[] spellCd;
    private final int[] deadAt;

    public SeedlingFates(
            Species species, double depthCm, StepGrid grid, StandRules.Seedling rules) {
        steps = grid.steps();
        this.depthCm = depthCm;
        deadlySteps = grid.covering(rules.deadlyDryHours());
        heatStepsBefore = grid.covering(HEAT_HOURS_BEFORE);
        heatStepsAfter = grid.covering(HEAT_HOURS_AFTER);
        rootCdPerCm = species.emergence().rootCdPerCm();
        upCd = (depthCm + rules.shootStartCm()) * species.emergence().shootCdPerCm();
        safeCd = Math.max(upCd, (rules.safeRootCm() - depthCm) * rootCdPerCm);
        fates = new double[(GERMINATED + steps) * STRIDE];
        fates[UNDER_WAY * STRIDE + 5] = 1;
        fates[WAITING * STRIDE + 6] = 1;
        reachCd = new double[steps];
        spellCd = new double[steps];
        deadAt = new int[steps + 1];
    }

    /**
     * Reckons one trace.
     *
     * @param trace its hours
     * @param kept growth, and shares of seed left by rain and heat
     * @param worthByStep of emergence; below zero where it is too late
     * @param driestMpa no seed starts below this potential, so those steps are passed over
     */
    public void reckon(
            TraceColumns.Column trace, Kept kept, double[] worthByStep, double driestMpa) {
        boolean dries = trace.deepestDryCm() > depthCm;
        if (dries) {
            findDeaths(trace.dryFrontCm(), kept.growthCd);
        }
        int up = 0;
        int safe = 0;
        for (int g = 0; g < steps; g++) {
            if (kept.startingMpa[g] <= driestMpa) {
                continue;
            }
            double born = kept.growthCd[g + 1];
            up = reach(Math.max(up, g + 1), born + upCd, kept.growthCd);
            if (dries && deadAt[g] < steps) {
                safe = reach(Math.max(safe, g + 1), born + safeCd, kept.growthCd);
            }
            if (dries && deadAt[g] < steps && deadAt[g] <= safe) {
                lost(g, 1, 0);
            } else if (up >= steps || worthByStep[up] < 0) {
                lost(g, 0, 1);
            } else {
                comesUp(g, up, kept, worthByStep[up]);
            }
        }
    }

    private void lost(int g, double dead, double underWay) {
        int at = (GERMINATED + g) * STRIDE;
        fates[at] = 0;
        fates[at + 1] = 0;
        fates[at + 2] = 0;
        fates[at + 3] = 0;
        fates[at + 4] = dead;
        fates[at + 5] = underWay;
    }

    private void comesUp(int g, int up, Kept kept, double worth) {
        int at = (GERMINATED + g) * STRIDE;
        double alive = kept.heatBetween(up - heatStepsBefore, up + heatStepsAfter);
        double plants = alive * kept.rain[up + 1];
        fates[at] = plants;
        fates[at + 1] = plants * worth;
        fates[at + 2] = plants * up;
        fates[at + 3] = 1 - alive;
        fates[at + 4] = 0;
        fates[at + 5] = 0;
    }

    /** First step from {@code from} on that ends with at least that growth. */
    private int reach(int from, double growth, double[] growthCd) {
        int t = from;
        while (t < steps && growthCd[t + 1] < growth) {
            t++;
        }
        return t;
    }

    /** Fills {@link #deadAt}; {@code steps} where a seed never dries out. */
    private void findDeaths(double[] dryFrontCm, double[] growthCd) {
        findSpells(dryFrontCm, growthCd);
        deadAt[steps] = steps;
        for (int g = steps - 1; g >= 0; g--) {
            double born = growthCd[g + 1];
            int first = g + deadlySteps;
            if (first < steps && spellCd[first] < born) {
                deadAt[g] = first;
            } else {
                int t = Math.max(first + 1, deadAt[g + 1]);
                while (t < steps && spellCd[t] >= born) {
                    t++;
                }
                deadAt[g] = Math.min(t, steps);
            }
        }
    }

    /**
     * Growth by which a seed must have germinated, at the latest, for its root to have been in
     * moist soil in one step at least of the spell that ends here.
     */
    private void findSpells(double[] dryFrontCm, double[] growthCd) {
        for (int t = 0; t < steps; t++) {
            double drierCm = Math.max(0, dryFrontCm[t] - depthCm);
            reachCd[t] = growthCd[t + 1] - drierCm * rootCdPerCm;
        }
        System.arraycopy(reachCd, 0, spellCd, 0, steps);
        for (int back = 1; back < deadlySteps; back++) {
            for (int t = back; t < steps; t++) {
                spellCd[t] = Math.max(spellCd[t], reachCd[t - back]);
            }
        }
    }
}
