package rainward.soil.property;

import rainward.farm.Require;

/**
 * Runoff of a storm by the curve number of its cover and soil group, {@code Q = (P - 0.2 S)^2 / (P
 * + 0.8 S)}, {@code S = 25400 / CN - 254} (TR-55; Hawkins and others for the general form). The
 * column itself uses Green and Ampt; this is its cross-check.
 *
 * @param curveNumber 30 to 100, for average moisture before the storm
 */
public record CurveNumber(double curveNumber) {

    private static final double INITIAL_SHARE = 0.2;

    public CurveNumber {
        Require.inRange("curveNumber", curveNumber, 30, 100);
    }

    /** Greatest retention after runoff begins, S [mm]. */
    public double retentionMm() {
        return 25400 / curveNumber - 254;
    }

    /**
     * Runoff of a storm.
     *
     * @param rainMm of the whole storm, not below zero [mm]
     * @return 0 up to the initial abstraction [mm]
     */
    public double runoffMm(double rainMm) {
        double beyond = Math.max(0, rainMm - INITIAL_SHARE * retentionMm());
        return beyond == 0 ? 0 : beyond * beyond / (beyond + retentionMm());
    }

    /**
     * The number after a dry spell, antecedent condition I: {@code 4.2 CN / (10 - 0.058 CN)}, from
     * memory; within 2 of the handbook's table.
     */
    public CurveNumber afterDrySpell() {
        return new CurveNumber(Math.max(30, 4.2 * curveNumber / (10 - 0.058 * curveNumber)));
    }

    /**
     * The number after wet days, antecedent condition III: {@code 23 CN / (10 + 0.13 CN)}, from
     * memory; within 2 of the handbook's table.
     */
    public CurveNumber afterWetDays() {
        return new CurveNumber(23 * curveNumber / (10 + 0.13 * curveNumber));
    }
}
