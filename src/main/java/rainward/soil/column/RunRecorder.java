package rainward.soil.column;

import java.util.Arrays;
import rainward.soil.SoilRun;
import rainward.soil.Workability;
import rainward.soil.property.Layers;

/** Keeps what the surface of all traces does, hour by hour. */
public final class RunRecorder {

    private static final double WORKED_CM = 10;
    private static final double CARRYING_CM = 20;

    private final ColumnStep step;
    private final double workableMm;
    private final double trafficableMm;
    private final double[][] dryFrontCm;
    private final double[][] runoffMm;

    /** One row for all hours without runoff or without dry soil; nobody writes to a run. */
    private final double[] none;

    private final boolean[][] workable;
    private final double[][] surfaceTempC;
    private final double[] wiltingMm;
    private final double[] worked;

    public RunRecorder(ColumnStep step, int hours, Workability limits) {
        int n = step.traces;
        this.step = step;
        this.workableMm = limits.workableShare() * capacityMm(step.layers, WORKED_CM);
        this.trafficableMm = limits.trafficableShare() * capacityMm(step.layers, CARRYING_CM);
        this.dryFrontCm = new double[hours][];
        this.runoffMm = new double[hours][];
        this.none = new double[n];
        this.workable = new boolean[hours][n];
        this.surfaceTempC = new double[hours][n];
        this.wiltingMm = new double[step.layers.count()];
        for (int l = 0; l < wiltingMm.length; l++) {
            wiltingMm[l] = step.layers.wiltingWetness() * step.layers.poreMm[l];
        }
        this.worked = new double[n];
    }

    private static double capacityMm(Layers layers, double depthCm) {
        double sum = 0;
        for (int l = 0; l < layers.count() && layers.bottomCm(l) <= depthCm; l++) {
            sum += layers.capacityWetness() * layers.poreMm[l];
        }
        return sum;
    }

    public void record(int hour) {
        int n = step.traces;
        runoffMm[hour] = step.water.infiltration().ranOff()
                ? step.water.infiltration().runoffMm.clone()
                : none;
        System.arraycopy(step.heat.surfaceTempC, 0, surfaceTempC[hour], 0, n);
        dryFrontCm[hour] = dryFront();
        recordWork(workable[hour]);
    }

    /** Where the water content passes wilting point, straight between the middles of layers. */
    private double[] dryFront() {
        double[][] water = step.water.waterMm;
        double[] front = none;
        for (int i = 0; i < step.traces; i++) {
            if (water[0][i] < wiltingMm[0]) {
                front = front == none ? new double[step.traces] : front;
                front[i] = frontCm(i);
            }
        }
        return front;
    }

    private double frontCm(int trace) {
        int l = 1;
        while (l < wiltingMm.length && step.water.waterMm[l][trace] < wiltingMm[l]) {
            l++;
        }
        return frontCm(l, trace);
    }

    private double frontCm(int firstMoist, int trace) {
        Layers layers = step.layers;
        int dry = firstMoist - 1;
        if (firstMoist == wiltingMm.length) {
            return layers.bottomCm(dry);
        }
        double above = step.water.waterMm[dry][trace] / wiltingMm[dry];
        double below = step.water.waterMm[firstMoist][trace] / wiltingMm[firstMoist];
        double share = (1 - above) / (below - above);
        double fromCm = layers.middleCm(dry);
        return fromCm + share * (layers.middleCm(firstMoist) - fromCm);
    }

    private void recordWork(boolean[] fit) {
        Layers layers = step.layers;
        Arrays.fill(worked, 0);
        int l = 0;
        for (; l < layers.count() && layers.bottomCm(l) <= WORKED_CM; l++) {
            addLayer(l);
        }
        for (int i = 0; i < fit.length; i++) {
            fit[i] = worked[i] <= workableMm;
        }
        for (; l < layers.count() && layers.bottomCm(l) <= CARRYING_CM; l++) {
            addLayer(l);
        }
        for (int i = 0; i < fit.length; i++) {
            fit[i] &= worked[i] <= trafficableMm;
        }
    }

    private void addLayer(int layer) {
        double[] water = step.water.waterMm[layer];
        for (int i = 0; i < worked.length; i++) {
            worked[i] += water[i];
        }
    }

    public double[][] surfaceTempC() {
        return surfaceTempC;
    }

    public SoilRun.SoilSurface surface() {
        return new SoilRun.SoilSurface(dryFrontCm, runoffMm, workable);
    }
}
