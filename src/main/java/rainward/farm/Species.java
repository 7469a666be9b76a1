package rainward.farm;

/**
 * How seed of one species answers to heat and water. Constants and their sources:
 * {@code shared/species.csv}.
 *
 * @param name common name
 * @param cardinal temperatures between which it germinates
 * @param hydrothermalMpaCd hydrothermal time to germinate, thetaHT (Bradford 2002) [MPa C d]
 * @param psiBase50Mpa median base water potential [MPa], below zero
 * @param psiBaseSigmaMpa its spread over the seed lot [MPa]
 * @param germinableFraction share of pure seed able to germinate at best, 0 to 1
 * @param emergence heat that shoot and root need after germination
 * @param seedsPerKg number of seeds in a kilogram [1/kg]
 */
public record Species(
        String name,
        Cardinal cardinal,
        double hydrothermalMpaCd,
        double psiBase50Mpa,
        double psiBaseSigmaMpa,
        double germinableFraction,
        SeedlingGrowth emergence,
        double seedsPerKg) {

    public Species {
        Require.named("species name", name);
        Require.positive("hydrothermalMpaCd", hydrothermalMpaCd);
        Require.inRange("psiBase50Mpa", psiBase50Mpa, -5, -0.05);
        Require.positive("psiBaseSigmaMpa", psiBaseSigmaMpa);
        Require.inRange("germinableFraction", germinableFraction, 0, 1);
        Require.positive("seedsPerKg", seedsPerKg);
    }

    /**
     * Temperatures of germination.
     *
     * @param baseTempC below it nothing happens [C]
     * @param optimumTempC up to it the rate rises in a straight line [C]
     * @param ceilingTempC at it the rate is back at zero [C]
     * @param lethalTempC a seedling at the surface dies above it [C]
     */
    public record Cardinal(
            double baseTempC, double optimumTempC, double ceilingTempC, double lethalTempC) {

        public Cardinal {
            Require.inRange("baseTempC", baseTempC, -10, 20);
            Require.inRange("optimumTempC", optimumTempC, baseTempC + 1, 45);
            Require.inRange("ceilingTempC", ceilingTempC, optimumTempC + 1, 55);
            Require.inRange("lethalTempC", lethalTempC, ceilingTempC, 70);
        }
    }

    /**
     * Growth between germination and safety.
     *
     * @param shootCdPerCm thermal time for the shoot to rise by a centimetre [C d/cm]
     * @param rootCdPerCm thermal time for the root to go down a centimetre [C d/cm]
     * @param greatestDepthCm seed deeper than this does not reach the light [cm]
     */
    public record SeedlingGrowth(double shootCdPerCm, double rootCdPerCm, double greatestDepthCm) {

        public SeedlingGrowth {
            Require.positive("shootCdPerCm", shootCdPerCm);
            Require.positive("rootCdPerCm", rootCdPerCm);
            Require.positive("greatestDepthCm", greatestDepthCm);
        }
    }
}
