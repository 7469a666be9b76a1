package rainward.stand;

import org.apache.commons.statistics.distribution.NormalDistribution;

import rainward.farm.Species;

/**
 * Germination of a seed lot by hydrothermal time with normal base potentials: {@code P(t) =
 * Phi{[psi - thetaHT / (t (T - Tb)) - psib50] / sigma}} (bradford2002). Holds between base and
 * optimum; above the optimum degrees fall to the ceiling as {@link ThermalResponse} says.
 */
final class HydrothermalTime {
    private final Species species;
    private final ThermalResponse warmth;

    HydrothermalTime(Species species) {
        this.species = species;
        warmth = new ThermalResponse(species.cardinal());
    }

    /**
     * Share of the germinable seed that has germinated under steady conditions.
     *
     * @param potentialMpa that the seed feels [MPa]
     * @param tempC steady temperature [C]
     * @param days since it was wetted [d]
     * @return 0 to 1
     */
    double germinatedFraction(double potentialMpa, double tempC, double days) {
        double heatCd = days * warmth.degrees(tempC);
        if (heatCd == 0) {
            return 0;
        }
        return spread().cumulativeProbability(potentialMpa - species.hydrothermalMpaCd() / heatCd);
    }

    /**
     * Base potentials that stand for the seed lot: the middles of classes with equal share.
     *
     * @param classes how many
     * @return from the seed that starts in the driest soil to the last [MPa]
     */
    double[] basePotentialsMpa(int classes) {
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
