package rainward.soil.column;

import rainward.soil.SoilRun;
import rainward.soil.property.TensionTable;

/** Keeps water and heat at one sowing depth on all traces. */
public final class SeedZoneRecorder {

    private final double depthCm;
    private final DepthReader depth;
    private final TensionTable tension;
    private final double[][] potentialMpa;
    private final double[][] waterFraction;
    private final double[][] tempC;
    private final int traces;

    public SeedZoneRecorder(ColumnStep step, double depthCm, int hours) {
        this.depthCm = depthCm;
        this.depth = new DepthReader(step, depthCm);
        this.tension = new TensionTable(step.layers);
        this.potentialMpa = new double[hours][];
        this.waterFraction = new double[hours][];
        this.tempC = new double[hours][];
        this.traces = step.traces;
    }

    public void record(int hour) {
        double[] fraction = new double[traces];
        for (int i = 0; i < fraction.length; i++) {
            fraction[i] = depth.waterFraction(i);
        }
        waterFraction[hour] = fraction;
        double[] temp = new double[traces];
        for (int i = 0; i < temp.length; i++) {
            temp[i] = depth.tempC(i);
        }
        tempC[hour] = temp;
        double[] potential = new double[traces];
        for (int i = 0; i < potential.length; i++) {
            potential[i] = tension.potentialMpa(depth.wetness(i));
        }
        potentialMpa[hour] = potential;
    }

    public SoilRun.SeedZone zone(RunRecorder surface) {
        return new SoilRun.SeedZone(
                depthCm, potentialMpa, waterFraction, tempC, surface.surfaceTempC());
    }
}
