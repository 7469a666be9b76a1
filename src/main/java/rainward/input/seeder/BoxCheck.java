package rainward.input.seeder;

import rainward.farm.Require;

/**
 * A look into the boxes during the work: is the setting right, and will the seed finish?
 *
 * @param target what was meant
 * @param filledKg put into the boxes so far, what stood in them before counted in [kg]
 * @param sownHa worked since [ha]
 * @param leftKg in the boxes now [kg]
 * @param readingKg how far the reading of {@code leftKg} may be off [kg]
 */
public record BoxCheck(
        Target target, double filledKg, double sownHa, double leftKg, double readingKg) {

    public BoxCheck {
        Require.positive("filledKg", filledKg);
        Require.positive("sownHa", sownHa);
        Require.notNegative("readingKg", readingKg);
        Require.notNegative("leftKg", leftKg);
        Require.that(
                leftKg <= filledKg,
                "left in the boxes are " + leftKg + " kg, more than the " + filledKg
                        + " kg put in; weigh or read again");
    }

    /**
     * What was meant.
     *
     * @param rateKgPerHa out of the bag [kg/ha]
     * @param settingIndex in use, on the seeder's own scale
     * @param toGoHa still to be sown with this seed [ha]
     * @param inBagsKg seed at hand outside the boxes [kg]
     */
    public record Target(double rateKgPerHa, double settingIndex, double toGoHa, double inBagsKg) {

        public Target {
            Require.positive("rateKgPerHa", rateKgPerHa);
            Require.positive("settingIndex", settingIndex);
            Require.notNegative("toGoHa", toGoHa);
            Require.notNegative("inBagsKg", inBagsKg);
        }
    }

    /** What should be left; below zero the boxes should have run empty by now [kg]. */
    public double expectedLeftKg() {
        return filledKg - target.rateKgPerHa() * sownHa;
    }

    /** What really went out [kg/ha]. */
    public double trueRateKgPerHa() {
        return (filledKg - leftKg) / sownHa;
    }

    /** How far the true rate may be off by the reading alone [kg/ha]. */
    public double rateErrorKgPerHa() {
        return readingKg / sownHa;
    }

    /** What to do about the setting. */
    public Verdict verdict() {
        double offKgPerHa = trueRateKgPerHa() - target.rateKgPerHa();
        if (filledKg - leftKg <= readingKg) {
            return target.rateKgPerHa() * sownHa > 2 * readingKg
                    ? Verdict.NOTHING_COMES
                    : Verdict.TOO_EARLY;
        }
        if (Math.abs(offKgPerHa) > Math.max(rateErrorKgPerHa(), TOLERANCE * target.rateKgPerHa())) {
            return offKgPerHa > 0 ? Verdict.HEAVY : Verdict.LIGHT;
        }
        return rateErrorKgPerHa() > TOLERANCE * target.rateKgPerHa()
                ? Verdict.TOO_EARLY
                : Verdict.RIGHT;
    }

    // Common practice, no source: five per cent is as near as a seeder is set.
    private static final double TOLERANCE = 0.05;

    /**
     * Setting that brings the target rate, in proportion to what came out; the setting in use where
     * there is nothing to correct.
     */
    public double correctedSetting() {
        return switch (verdict()) {
            case HEAVY, LIGHT -> target.settingIndex() * target.rateKgPerHa() / trueRateKgPerHa();
            case RIGHT, TOO_EARLY, NOTHING_COMES -> target.settingIndex();
        };
    }

    /** Seed short at the target rate, boxes and bags together; zero where it finishes [kg]. */
    public double shortAtTargetKg() {
        return shortKg(target.rateKgPerHa());
    }

    /** Seed short if nothing is changed [kg]. */
    public double shortAsSetKg() {
        return shortKg(trueRateKgPerHa());
    }

    private double shortKg(double rateKgPerHa) {
        return Math.max(0, rateKgPerHa * target.toGoHa() - leftKg - target.inBagsKg());
    }

    /** What the look says. */
    public enum Verdict {
        RIGHT("the setting is right"),
        HEAVY("too much comes out: close to the corrected setting"),
        LIGHT("too little comes out: open to the corrected setting"),
        TOO_EARLY("too little is sown to tell; look again further on"),
        NOTHING_COMES("nothing comes out: look for a plugged or shut outlet, or a lost drive");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
