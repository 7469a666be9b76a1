package rainward.stand;

import rainward.farm.Species;

/**
 * What becomes of a seed by the hour in which it germinates, on one trace: it comes up, dries out,
 * is scorched, or is still under way at the end. Nothing here depends on the hour of seeding, so
 * one pass serves all of them.
 *
 * <p>The root tip lies at {@code depth + growth / rootCdPerCm}. A seedling dies in the hour that
 * ends a spell of {@code deadlyDryHours} with the drying front below the tip, unless it is up and
 * its root has reached the safe depth before. But for seeds killed at once, the hour of death only
 * moves back as the hour of germination moves back: all fates are found in linear time.
 */
final class SeedlingFates {
    /** Entries a germination hour: plants, plants x worth, plants x hour, and a count of losses. */
    static final int STRIDE = 4;

    /** A seed under way counts so many, a dead one counts 1, in the fourth entry. */
    static final int UNDER_WAY = 4096;

    /**
     * Surface heat counts from so long before a seedling is up, when its hook nears the top [h].
     */
    private static final int HEAT_HOURS_BEFORE = 6;

    /** Surface heat counts until the stem has hardened; chosen here, no source [h]. */
    private static final int HEAT_HOURS_AFTER = 72;

    /** By germination hour, {@link #STRIDE} entries each. */
    final double[] fates;

    /** Share scorched, by germination hour. */
    final double[] scorched;

    private final int hours;
    private final int deadlyHours;
    private final double depthCm;
    private final double rootCdPerCm;
    private final double upCd;
    private final double safeCd;
    private final double[] reachCd;
    private final double[] spellCd;
    private final int[] deadAt;

    SeedlingFates(Species species, double depthCm, int hours, StandRules.Seedling rules) {
        this.hours = hours;
        this.depthCm = depthCm;
        deadlyHours = rules.deadlyDryHours();
        rootCdPerCm = species.emergence().rootCdPerCm();
        upCd = (depthCm + rules.shootStartCm()) * species.emergence().shootCdPerCm();
        safeCd = Math.max(upCd, (rules.safeRootCm() - depthCm) * rootCdPerCm);
        fates = new double[hours * STRIDE];
        scorched = new double[hours];
        reachCd = new double[hours];
        spellCd = new double[hours];
        deadAt = new int[hours + 1];
    }

    /**
     * Reckons one trace.
     *
     * @param trace its hours
     * @param kept growth, and shares of seed left by rain and heat
     * @param worthByHour of emergence; below zero where it is too late
     */
    void reckon(TraceColumns.Column trace, Kept kept, double[] worthByHour) {
        findDeaths(trace.dryFrontCm, kept.growthCd);
        int up = 0;
        int safe = 0;
        for (int g = 0; g < hours; g++) {
            double born = kept.growthCd[g + 1];
            up = reach(Math.max(up, g + 1), born + upCd, kept.growthCd);
            safe = reach(Math.max(safe, g + 1), born + safeCd, kept.growthCd);
            scorched[g] = 0;
            if (deadAt[g] < hours && deadAt[g] <= safe) {
                put(g, 0, 0, 0, 1);
            } else if (up >= hours || worthByHour[up] < 0) {
                put(g, 0, 0, 0, UNDER_WAY);
            } else {
                double alive = kept.heatBetween(up - HEAT_HOURS_BEFORE, up + HEAT_HOURS_AFTER);
                scorched[g] = 1 - alive;
                double plants = alive * kept.rain[up + 1];
                put(g, plants, plants * worthByHour[up], plants * up, 0);
            }
        }
    }

    private void put(int g, double plants, double worth, double hour, double lost) {
        fates[g * STRIDE] = plants;
        fates[g * STRIDE + 1] = worth;
        fates[g * STRIDE + 2] = hour;
        fates[g * STRIDE + 3] = lost;
    }

    /** First hour from {@code from} on that ends with at least that growth. */
    private int reach(int from, double growth, double[] growthCd) {
        int h = from;
        while (h < hours && growthCd[h + 1] < growth) {
            h++;
        }
        return h;
    }

    /** Fills {@link #deadAt}; {@code hours} where a seed never dries out. */
    private void findDeaths(double[] dryFrontCm, double[] growthCd) {
        findSpells(dryFrontCm, growthCd);
        deadAt[hours] = hours;
        for (int g = hours - 1; g >= 0; g--) {
            double born = growthCd[g + 1];
            int first = g + deadlyHours;
            if (first < hours && spellCd[first] < born) {
                deadAt[g] = first;
            } else {
                int t = Math.max(first + 1, deadAt[g + 1]);
                while (t < hours && spellCd[t] >= born) {
                    t++;
                }
                deadAt[g] = Math.min(t, hours);
            }
        }
    }

    /**
     * Growth by which a seed must have germinated, at the latest, for its root to have been in
     * moist soil in one hour at least of the spell that ends here.
     */
    private void findSpells(double[] dryFrontCm, double[] growthCd) {
        for (int h = 0; h < hours; h++) {
            double drierCm = Math.max(0, dryFrontCm[h] - depthCm);
            reachCd[h] = growthCd[h + 1] - drierCm * rootCdPerCm;
        }
        for (int h = 0; h < hours; h++) {
            double latest = reachCd[h];
            for (int back = Math.max(0, h - deadlyHours + 1); back < h; back++) {
                latest = Math.max(latest, reachCd[back]);
            }
            spellCd[h] = latest;
        }
    }
}
