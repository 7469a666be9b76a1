package rainward.soil.verify;

/**
 * How a modelled series agrees with a measured one, in the unit of both, over the steps where
 * neither is NaN.
 */
final class Agreement {

    private final int count;
    private final double correlation;
    private final double unbiasedRmse;
    private final double bias;

    private Agreement(int count, double correlation, double unbiasedRmse, double bias) {
        this.count = count;
        this.correlation = correlation;
        this.unbiasedRmse = unbiasedRmse;
        this.bias = bias;
    }

    static Agreement of(double[] modelled, double[] measured) {
        int n = 0;
        double sumModel = 0;
        double sumTruth = 0;
        for (int i = 0; i < measured.length; i++) {
            if (!Double.isNaN(modelled[i] + measured[i])) {
                n++;
                sumModel += modelled[i];
                sumTruth += measured[i];
            }
        }
        double meanModel = sumModel / n;
        double meanTruth = sumTruth / n;
        double varModel = 0;
        double varTruth = 0;
        double both = 0;
        for (int i = 0; i < measured.length; i++) {
            if (!Double.isNaN(modelled[i] + measured[i])) {
                double m = modelled[i] - meanModel;
                double t = measured[i] - meanTruth;
                varModel += m * m;
                varTruth += t * t;
                both += m * t;
            }
        }
        return new Agreement(
                n,
                both / Math.sqrt(varModel * varTruth),
                Math.sqrt(Math.max(0, (varModel + varTruth - 2 * both) / n)),
                meanModel - meanTruth);
    }

    int count() {
        return count;
    }

    /** Pearson's correlation. */
    double correlation() {
        return correlation;
    }

    /** Root mean square error after the mean error is taken off. */
    double unbiasedRmse() {
        return unbiasedRmse;
    }

    /** Modelled less measured, mean. */
    double bias() {
        return bias;
    }

    /** Root mean square error, bias included. */
    double rmse() {
        return Math.hypot(unbiasedRmse, bias);
    }
}
