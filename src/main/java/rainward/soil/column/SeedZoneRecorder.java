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

    public SeedZoneRecorder(ColumnStep step, double depthCm, int hours) {
        this.depthCm = depthCm;
        this.depth = new DepthReader(step, depthCm);
        this.tension = new TensionTable(step.layers);
        this.potentialMpa = new double[hours][step.traces];
        this.waterFraction = new double[hours][step.traces];
        this.tempC = new double[hours][step.traces];
    }

    public void record(int hour) {
        double[] fraction = waterFraction[hour];
        for (int i = 0; i < fraction.length; i++) {
            fraction[i] = depth.waterFraction(i);
        }
        double[] temp = tempC[hour];
        for (int i = 0; i < temp.length; i++) {
            temp[i] = depth.tempC(i);
        }
        double[] potential = potentialMpa[hour];
        for (int i = 0; i < potential.length; i++) {
            potential[i] = tension.potentialMpa(depth.wetness(i));
        }
    }

    public SoilRun.SeedZone zone(RunRecorder surface) {
        return new SoilRun.SeedZone(
                depthCm, potentialMpa, waterFraction, tempC, surface.surfaceTempC());
    }
}
