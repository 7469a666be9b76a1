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
 * @param buildUpKgPerHa for each mg/kg below the critical level, a year [kg/ha]
 */
public record TestRule(
        String method,
        double criticalPpm,
        double plateauPpm,
        double drawdownPpm,
        double buildUpKgPerHa) {

    public TestRule {
        Require.named("extraction method", method);
        Require.positive("criticalPpm", criticalPpm);
        Require.notNegative("plateauPpm", plateauPpm);
        Require.positive("drawdownPpm", drawdownPpm);
        Require.notNegative("buildUpKgPerHa", buildUpKgPerHa);
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
        return removalKgPerHa * share + lackPpm * buildUpKgPerHa;
    }
}
