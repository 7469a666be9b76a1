package rainward.input.fertilizer;

import rainward.farm.Require;

/**
 * Fertilizer for one nutrient by its soil test, in the three steps of the Tri-State recommendations
 * (Extension Bulletin E-2567): below the critical level what the crop takes and a share of what the
 * soil lacks, on the plateau what the crop takes, above it less and less.
 *
 * @param method of extraction that the levels are for
 * @param criticalPpm below it the soil is built up [mg/kg]
 * @param plateauPpm width of the plateau above the critical level [mg/kg]
 * @param drawdownPpm width of the fall to nothing above the plateau [mg/kg]
 * @param feed what is given beside what the crop takes
 */
public record TestRule(
        String method, double criticalPpm, double plateauPpm, double drawdownPpm, Feed feed) {

    public TestRule {
        Require.named("extraction method", method);
        Require.positive("criticalPpm", criticalPpm);
        Require.notNegative("plateauPpm", plateauPpm);
        Require.positive("drawdownPpm", drawdownPpm);
    }

    /**
     * Rate for a year.
     *
     * @param testPpm what the laboratory found, by the method of this rule [mg/kg]
     * @param removalKgPerHa what the crop takes [kg/ha]
     */
    public double rateKgPerHa(double testPpm, double removalKgPerHa) {
        Require.notNegative("testPpm", testPpm);
        Require.notNegative("removalKgPerHa", removalKgPerHa);
        double lackPpm = Math.max(0, criticalPpm - testPpm);
        double abovePpm = testPpm - criticalPpm - plateauPpm;
        double share = Math.max(0, 1 - Math.max(0, abovePpm) / drawdownPpm);
        return (removalKgPerHa + feed.fixedKgPerHa()) * share + lackPpm * feed.buildUpKgPerHa();
    }

    /**
     * What is given beside what the crop takes.
     *
     * @param buildUpKgPerHa for each mg/kg below the critical level, a year [kg/ha]
     * @param fixedKgPerHa added to what the crop takes [kg/ha]
     */
    public record Feed(double buildUpKgPerHa, double fixedKgPerHa) {

        public Feed {
            Require.notNegative("buildUpKgPerHa", buildUpKgPerHa);
            Require.notNegative("fixedKgPerHa", fixedKgPerHa);
        }
    }

    /**
     * A rule whose critical level and build-up rise with the exchange capacity of the soil.
     *
     * @param atZero the rule of a soil without any
     * @param criticalPpmPerCmolPerKg rise of the critical level [mg/kg per cmol/kg]
     * @param buildUpKgPerHaPerCmolPerKg rise of the build-up [kg/ha per cmol/kg]
     */
    public record ByExchange(
            TestRule atZero, double criticalPpmPerCmolPerKg, double buildUpKgPerHaPerCmolPerKg) {

        public ByExchange {
            Require.notNegative("criticalPpmPerCmolPerKg", criticalPpmPerCmolPerKg);
            Require.notNegative("buildUpKgPerHaPerCmolPerKg", buildUpKgPerHaPerCmolPerKg);
        }

        /** True where the exchange capacity must be known. */
        public boolean asksExchange() {
            return criticalPpmPerCmolPerKg > 0 || buildUpKgPerHaPerCmolPerKg > 0;
        }

        /** The rule for a soil. */
        public TestRule at(double exchangeCmolPerKg) {
            Require.inRange("exchangeCmolPerKg", exchangeCmolPerKg, 0, 100);
            return new TestRule(
                    atZero.method(),
                    atZero.criticalPpm() + criticalPpmPerCmolPerKg * exchangeCmolPerKg,
                    atZero.plateauPpm(),
                    atZero.drawdownPpm(),
                    new Feed(
                            atZero.feed().buildUpKgPerHa()
                                    + buildUpKgPerHaPerCmolPerKg * exchangeCmolPerKg,
                            atZero.feed().fixedKgPerHa()));
        }
    }
}
