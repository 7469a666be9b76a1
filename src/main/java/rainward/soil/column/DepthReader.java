package rainward.soil.column;

import rainward.soil.property.Layers;

/** Reads water and heat at one depth, between the middles of the layers that lie about it. */
public final class DepthReader {

    private final double[] waterAbove;
    private final double[] waterBelow;
    private final double[] heatAbove;
    private final double[] heatBelow;
    private final double share;
    private final double fractionAbove;
    private final double fractionBelow;
    private final double wetAbove;
    private final double wetBelow;

    public DepthReader(ColumnStep step, double depthCm) {
        Layers layers = step.layers;
        int below = 0;
        while (below < layers.count() - 1 && layers.middleCm(below) < depthCm) {
            below++;
        }
        int above = Math.max(0, below - 1);
        double reach = layers.middleCm(below) - layers.middleCm(above);
        this.share = reach == 0 ? 0 : Math.min(1, (depthCm - layers.middleCm(above)) / reach);
        this.waterAbove = step.water.waterMm[above];
        this.waterBelow = step.water.waterMm[below];
        this.heatAbove = step.heat.tempC[above];
        this.heatBelow = step.heat.tempC[below];
        this.fractionAbove = (1 - share) / layers.thicknessMm[above];
        this.fractionBelow = share / layers.thicknessMm[below];
        this.wetAbove = (1 - share) / layers.poreMm[above];
        this.wetBelow = share / layers.poreMm[below];
    }

    public double waterFraction(int trace) {
        return waterAbove[trace] * fractionAbove + waterBelow[trace] * fractionBelow;
    }

    public double wetness(int trace) {
        return waterAbove[trace] * wetAbove + waterBelow[trace] * wetBelow;
    }

    public double tempC(int trace) {
        return heatAbove[trace] + share * (heatBelow[trace] - heatAbove[trace]);
    }
}
