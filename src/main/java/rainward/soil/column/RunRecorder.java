package rainward.soil.column;

import java.util.Arrays;
import java.util.stream.IntStream;
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
    private final double[] tooWet;
    private final int[] traceNumbers;

    /** Traces that are dry down to the layer looked at. */
    private final int[] dry;

    private int dryCount;

    public RunRecorder(ColumnStep step, int hours, Workability limits) {
        int n = step.traces;
        this.step = step;
        this.workableMm = limits.workableShare() * capacityMm(step.layers, WORKED_CM);
        this.trafficableMm = limits.trafficableShare() * capacityMm(step.layers, CARRYING_CM);
        this.dryFrontCm = new double[hours][];
        this.runoffMm = new double[hours][];
        this.none = new double[n];
        this.workable = new boolean[hours][];
        this.surfaceTempC = new double[hours][];
        this.wiltingMm = new double[step.layers.count()];
        for (int l = 0; l < wiltingMm.length; l++) {
            wiltingMm[l] = step.layers.wiltingWetness() * step.layers.poreMm[l];
        }
        this.worked = new double[n];
        this.tooWet = new double[n];
        this.traceNumbers = IntStream.range(0, n).toArray();
        this.dry = new int[n];
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
        surfaceTempC[hour] = step.heat.surfaceTempC.clone();
        dryFrontCm[hour] = dryFront();
        workable[hour] = new boolean[n];
        recordWork(workable[hour]);
    }

    /**
     * Where the water content passes wilting point, straight between the middles of layers. Layer
     * by layer the traces are looked at that are dry down to there; in most hours they are few.
     */
    private double[] dryFront() {
        dryCount = 0;
        keepDry(0, traceNumbers, step.traces);
        if (dryCount == 0) {
            return none;
        }
        double[] front = new double[step.traces];
        for (int l = 1; l < wiltingMm.length && dryCount > 0; l++) {
            findFront(l, front);
            keepDry(l, dry, dryCount);
        }
        for (int k = 0; k < dryCount; k++) {
            front[dry[k]] = step.layers.bottomCm(wiltingMm.length - 1);
        }
        return front;
    }

    /** Keeps those of some traces that are below wilting point in a layer; counts, not branches. */
    private void keepDry(int layer, int[] among, int many) {
        double[] water = step.water.waterMm[layer];
        double wilting = wiltingMm[layer];
        int count = 0;
        for (int k = 0; k < many; k++) {
            int trace = among[k];
            dry[count] = trace;
            count += water[trace] < wilting ? 1 : 0;
        }
        dryCount = count;
    }

    /** The front of all that are dry above a layer, as if it were moist on all of them. */
    private void findFront(int layer, double[] front) {
        double[] over = step.water.waterMm[layer - 1];
        double[] under = step.water.waterMm[layer];
        double perAbove = 1 / wiltingMm[layer - 1];
        double perBelow = 1 / wiltingMm[layer];
        double fromCm = step.layers.middleCm(layer - 1);
        double reachCm = step.layers.middleCm(layer) - fromCm;
        for (int k = 0; k < dryCount; k++) {
            int trace = dry[k];
            double above = over[trace] * perAbove;
            double below = under[trace] * perBelow;
            front[trace] = fromCm + reachCm * (1 - above) / (below - above);
        }
    }

    private void recordWork(boolean[] fit) {
        Layers layers = step.layers;
        Arrays.fill(worked, 0);
        int l = 0;
        for (; l < layers.count() && layers.bottomCm(l) <= WORKED_CM; l++) {
            addLayer(l);
        }
        for (int i = 0; i < fit.length; i++) {
            tooWet[i] = worked[i] - workableMm;
        }
        for (; l < layers.count() && layers.bottomCm(l) <= CARRYING_CM; l++) {
            addLayer(l);
        }
        for (int i = 0; i < fit.length; i++) {
            fit[i] = tooWet[i] <= 0 && worked[i] <= trafficableMm;
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
