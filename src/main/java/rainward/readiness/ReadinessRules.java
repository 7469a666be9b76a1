package rainward.readiness;

import java.time.Duration;
import rainward.farm.Require;

/**
 * Thresholds by which readiness is told.
 *
 * @param workableShare ground counts as workable in an hour where this share of traces says so
 * @param usefulRainMm rain within half a day that wets a seedbed through; chosen here [mm]
 * @param lookAhead how far ahead rain is looked for
 * @param hardRainMmPerH a 30-minute burst from here on is called hard; rule of thumb from memory
 *     [mm/h]
 * @param tooOld a forecast older than this is not read as if fresh
 * @param waitBelowShare seeding now is advised where it brings at least this share of the best hour
 */
public record ReadinessRules(
        double workableShare,
        double usefulRainMm,
        Duration lookAhead,
        double hardRainMmPerH,
        Duration tooOld,
        double waitBelowShare) {

    /** What the program uses. */
    public static final ReadinessRules DEFAULT =
            new ReadinessRules(0.5, 6, Duration.ofDays(5), 25, Duration.ofHours(36), 0.9);

    public ReadinessRules {
        Require.inRange("workableShare", workableShare, 0.01, 1);
        Require.positive("usefulRainMm", usefulRainMm);
        Require.positive("hardRainMmPerH", hardRainMmPerH);
        Require.inRange("waitBelowShare", waitBelowShare, 0, 1);
        Require.that(lookAhead.toHours() >= 1, "lookAhead is " + lookAhead);
        Require.that(!tooOld.isNegative(), "tooOld is " + tooOld);
    }
}
