package rainward.soil;

/** Keeps water and heat at one sowing depth on all traces, between the layers that lie about it. */
final class SeedZoneRecorder {

    private final ColumnStep step;
    private final double depthCm;
    private final int above;
    private final int below;
    private final double belowShare;
    private final TensionTable tension;
    private final double[][] potentialMpa;
    private final double[][] waterFraction;
    private final double[][] tempC;

    SeedZoneRecorder(ColumnStep step, double depthCm, int hours) {
        Layers layers = step.layers;
        int lower = 0;
        while (lower < layers.count() - 1 && layers.middleCm(lower) < depthCm) {
            lower++;
        }
        int upper = Math.max(0, lower - 1);
        double reach = layers.middleCm(lower) - layers.middleCm(upper);
        this.step = step;
        this.depthCm = depthCm;
        this.above = upper;
        this.below = lower;
        this.belowShare = reach == 0 ? 0 : Math.min(1, (depthCm - layers.middleCm(upper)) / reach);
        this.tension = new TensionTable(layers);
        this.potentialMpa = new double[hours][step.traces];
        this.waterFraction = new double[hours][step.traces];
        this.tempC = new double[hours][step.traces];
    }

    void record(int hour) {
        Layers layers = step.layers;
        double[] waterAbove = step.water.waterMm[above];
        double[] waterBelow = step.water.waterMm[below];
        double[] heatAbove = step.heat.tempC[above];
        double[] heatBelow = step.heat.tempC[below];
        double share = belowShare;
        double fractionAbove = (1 - share) / layers.thicknessMm[above];
        double fractionBelow = share / layers.thicknessMm[below];
        double[] fraction = waterFraction[hour];
        double[] temp = tempC[hour];
        for (int i = 0; i < fraction.length; i++) {
            fraction[i] = waterAbove[i] * fractionAbove + waterBelow[i] * fractionBelow;
            temp[i] = heatAbove[i] + share * (heatBelow[i] - heatAbove[i]);
        }
        double[] potential = potentialMpa[hour];
        double wetAbove = (1 - share) / layers.poreMm[above];
        double wetBelow = share / layers.poreMm[below];
        for (int i = 0; i < potential.length; i++) {
            double wetness = waterAbove[i] * wetAbove + waterBelow[i] * wetBelow;
            potential[i] = tension.potentialMpa(wetness);
        }
    }

    SoilRun.SeedZone zone(RunRecorder surface) {
        return new SoilRun.SeedZone(
                depthCm, potentialMpa, waterFraction, tempC, surface.surfaceTempC());
    }
}
