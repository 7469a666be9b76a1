package rainward.soil;

/** Keeps what the surface of all traces does, hour by hour. */
final class RunRecorder {

    /** Wetness range over which a layer turns from moist to dry for the dry front. */
    private static final double SOFT = 0.01;

    private static final double WORKED_CM = 10;
    private static final double CARRYING_CM = 20;

    private final ColumnStep step;
    private final double workableMm;
    private final double trafficableMm;
    private final double[][] dryFrontCm;
    private final double[][] runoffMm;
    private final boolean[][] workable;
    private final double[][] surfaceTempC;
    private final double[] dry;
    private final double[] worked;

    RunRecorder(ColumnStep step, int hours, Workability limits) {
        int n = step.traces;
        this.step = step;
        this.workableMm = limits.workableShare() * capacityMm(step.layers, WORKED_CM);
        this.trafficableMm = limits.trafficableShare() * capacityMm(step.layers, CARRYING_CM);
        this.dryFrontCm = new double[hours][n];
        this.runoffMm = new double[hours][n];
        this.workable = new boolean[hours][n];
        this.surfaceTempC = new double[hours][n];
        this.dry = new double[n];
        this.worked = new double[n];
    }

    private static double capacityMm(Layers layers, double depthCm) {
        double sum = 0;
        for (int l = 0; l < layers.count() && layers.bottomCm(l) <= depthCm; l++) {
            sum += layers.capacityWetness() * layers.poreMm[l];
        }
        return sum;
    }

    void record(int hour) {
        int n = step.traces;
        System.arraycopy(step.water.infiltration().runoffMm, 0, runoffMm[hour], 0, n);
        System.arraycopy(step.heat.surfaceTempC, 0, surfaceTempC[hour], 0, n);
        recordDryFront(dryFrontCm[hour]);
        recordWork(workable[hour]);
    }

    private void recordDryFront(double[] front) {
        Layers layers = step.layers;
        java.util.Arrays.fill(dry, 1);
        for (int l = 0; l < layers.count(); l++) {
            double[] water = step.water.waterMm[l];
            double perSoft = 1 / (SOFT * layers.poreMm[l]);
            double limit = 0.5 + layers.wiltingWetness() / SOFT;
            double thick = layers.thicknessMm[l] / 10;
            for (int i = 0; i < front.length; i++) {
                double here = Math.min(1, Math.max(0, limit - water[i] * perSoft));
                dry[i] *= here;
                front[i] += thick * dry[i];
            }
        }
    }

    private void recordWork(boolean[] fit) {
        Layers layers = step.layers;
        java.util.Arrays.fill(worked, 0);
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

    double[][] surfaceTempC() {
        return surfaceTempC;
    }

    SoilRun.SoilSurface surface() {
        return new SoilRun.SoilSurface(dryFrontCm, runoffMm, workable);
    }
}
