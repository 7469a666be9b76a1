package rainward.stand.seedling;

import org.apache.commons.statistics.distribution.NormalDistribution;

import rainward.farm.Species;

/**
 * Germination of a seed lot by hydrothermal time with normal base potentials: {@code P(t) =
 * Phi{[psi - thetaHT / (t (T - Tb)) - psib50 - kT (T - To)] / sigma}} (bradford2002). Up to the
 * optimum the last term is nothing; above it degrees stay at the optimum and every base potential
 * rises with {@code kT = -psib50 / (Tc - To)}, so that at the ceiling the middle seed of the lot
 * starts in free water no more, and the more demanding half has stopped before.
 */
public final class HydrothermalTime {
    private final Species species;
    private final double baseTempC;
    private final double optimumTempC;
    private final double risePerDegreeMpa;

    public HydrothermalTime(Species species) {
        this.species = species;
        Species.Cardinal cardinal = species.cardinal();
        baseTempC = cardinal.baseTempC();
        optimumTempC = cardinal.optimumTempC();
        risePerDegreeMpa = -species.psiBase50Mpa() / (cardinal.ceilingTempC() - optimumTempC);
    }

    /**
     * Progress towards germination in a day for each MPa above the base potential.
     *
     * @param tempC of the soil [C]
     * @return {@code (min(T, To) - Tb) / thetaHT}, not below zero [1/(MPa d)]
     */
    public double progressPerMpaDay(double tempC) {
        return Math.max(0, Math.min(tempC, optimumTempC) - baseTempC) / species.hydrothermalMpaCd();
    }

    /**
     * Rise of all base potentials in warm soil.
     *
     * @param tempC of the soil [C]
     * @return zero up to the optimum [MPa]
     */
    public double heatRiseMpa(double tempC) {
        return risePerDegreeMpa * Math.max(0, tempC - optimumTempC);
    }

    /**
     * Share of the germinable seed that has germinated under steady conditions.
     *
     * @param potentialMpa that the seed feels [MPa]
     * @param tempC steady temperature [C]
     * @param days since it was wetted [d]
     * @return 0 to 1
     */
    public double germinatedFraction(double potentialMpa, double tempC, double days) {
        double progressPerMpa = days * progressPerMpaDay(tempC);
        if (progressPerMpa == 0) {
            return 0;
        }
        double leastMpa = potentialMpa - heatRiseMpa(tempC) - 1 / progressPerMpa;
        return spread().cumulativeProbability(leastMpa);
    }

    /**
     * Base potentials that stand for the seed lot: the middles of classes with equal share.
     *
     * @param classes how many
     * @return from the seed that starts in the driest soil to the last [MPa]
     */
    public double[] basePotentialsMpa(int classes) {
        double[] middles = new double[classes];
        for (int i = 0; i < classes; i++) {
            middles[i] = spread().inverseCumulativeProbability((i + 0.5) / classes);
        }
        return middles;
    }

    private NormalDistribution spread() {
        return NormalDistribution.of(species.psiBase50Mpa(), species.psiBaseSigmaMpa());
    }
}
