package rainward.weather.source;

import rainward.farm.Require;

/**
 * An ensemble and how far it is trusted beside others.
 *
 * @param rain of its members, equally likely among themselves
 * @param weight of all its members together, against that of other ensembles; above 0
 */
public record WeightedEnsemble(EnsembleRain rain, double weight) {

    public WeightedEnsemble {
        Require.positive("weight", weight);
    }
}
