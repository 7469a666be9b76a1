package rainward.stand.bed;

import java.util.Arrays;
import rainward.soil.SoilRun;
import rainward.stand.SeedPlacement;
import rainward.stand.StandCase;

/**
 * Some traces turned from rows of hours into columns of steps, one trace after the other in memory,
 * so that what follows one seed through time stays in the cache.
 */
public final class TraceColumns {
    /** Traces that share the cache lines of their rows. */
    public static final int WIDTH = 8;

    /** Soil drier than that is as dry as can be: no seed starts in it [MPa]. */
    private static final double DRIEST_MPA = -3;

    /** Bursts below this do nothing to a seedbed [mm/h]; chosen here, no source. */
    private static final double GENTLE_MM_PER_H = 5;

    private final StandCase question;
    private final SurfaceDamage damage;
    private final StepGrid grid;
    private final double contact;
    private final double share;
    private final double[] sums = new double[WIDTH];
    private final Column[] columns;

    public TraceColumns(StandCase question, SurfaceDamage damage, StepGrid grid) {
        this.question = question;
        this.damage = damage;
        this.grid = grid;
        contact = SeedPlacement.contact(question.conditions());
        share = 1.0 / grid.stepHours();
        columns = new Column[WIDTH];
        Arrays.setAll(columns, i -> new Column(grid.steps()));
    }

    /** Column {@code i} of those loaded last. */
    public Column column(int i) {
        return columns[i];
    }

    /** Takes up to {@link #WIDTH} traces from {@code first} on; gives their number. */
    public int load(int first) {
        int count = Math.min(WIDTH, question.soil().traces() - first);
        for (int i = 0; i < count; i++) {
            columns[i].clear();
        }
        for (int step = 0; step < grid.steps(); step++) {
            loadSoil(step, first, count);
            for (int hour = grid.hour(step); hour < grid.hour(step + 1); hour++) {
                loadRain(step, hour, first, count);
            }
        }
        return count;
    }

    private void loadSoil(int step, int first, int count) {
        SoilRun soil = question.soil();
        sum(soil.seedZone().tempC(), step, first, count);
        for (int i = 0; i < count; i++) {
            columns[i].tempC[step] = sums[i] * share;
        }
        sum(soil.surface().dryFrontCm(), step, first, count);
        for (int i = 0; i < count; i++) {
            columns[i].dryFront(step, sums[i] * share);
        }
        sum(soil.seedZone().surfaceTempC(), step, first, count);
        for (int i = 0; i < count; i++) {
            columns[i].surface(step, sums[i] * share);
        }
        Arrays.fill(sums, 0);
        for (int hour = grid.hour(step); hour < grid.hour(step + 1); hour++) {
            double[] row = soil.seedZone().potentialMpa()[hour];
            for (int i = 0; i < count; i++) {
                sums[i] += Math.max(DRIEST_MPA, row[first + i]);
            }
        }
        for (int i = 0; i < count; i++) {
            columns[i].potential(step, sums[i] * share, contact);
        }
    }

    private void sum(double[][] rows, int step, int first, int count) {
        Arrays.fill(sums, 0);
        for (int hour = grid.hour(step); hour < grid.hour(step + 1); hour++) {
            double[] row = rows[hour];
            for (int i = 0; i < count; i++) {
                sums[i] += row[first + i];
            }
        }
    }

    private void loadRain(int step, int hour, int first, int count) {
        double[] peak = question.traces().peak30MmPerH()[hour];
        for (int i = 0; i < count; i++) {
            if (peak[first + i] > GENTLE_MM_PER_H) {
                double rainMm = question.traces().rainMm()[hour][first + i];
                columns[i].burst(step, rainMm, peak[first + i]);
            }
        }
    }

    /** One trace, by step. */
    public final class Column {
        public final double[] potentialMpa;

        /** What the seed feels of it through its contact with the soil. */
        public final double[] feltPotentialMpa;

        public final double[] tempC;

        public final double[] surfaceTempC;

        public final double[] dryFrontCm;

        /** Share of seed that rills leave in place. */
        public final double[] stayingFraction;

        /** Share of small seed that is not sealed in. */
        public final double[] openFraction;

        private double hottestC;
        private double deepestDryCm;

        Column(int steps) {
            potentialMpa = new double[steps];
            feltPotentialMpa = new double[steps];
            tempC = new double[steps];
            surfaceTempC = new double[steps];
            dryFrontCm = new double[steps];
            stayingFraction = new double[steps];
            openFraction = new double[steps];
        }

        /** Greatest temperature of the surface on this trace. */
        public double hottestC() {
            return hottestC;
        }

        /** How far the drying front gets on this trace. */
        public double deepestDryCm() {
            return deepestDryCm;
        }

        private void clear() {
            Arrays.fill(stayingFraction, 1);
            Arrays.fill(openFraction, 1);
            hottestC = Double.NEGATIVE_INFINITY;
            deepestDryCm = 0;
        }

        private void potential(int step, double meanMpa, double contact) {
            potentialMpa[step] = meanMpa;
            feltPotentialMpa[step] = meanMpa / contact;
        }

        private void surface(int step, double meanTempC) {
            surfaceTempC[step] = meanTempC;
            hottestC = Math.max(hottestC, meanTempC);
        }

        private void dryFront(int step, double meanCm) {
            dryFrontCm[step] = meanCm;
            deepestDryCm = Math.max(deepestDryCm, meanCm);
        }

        private void burst(int step, double rainMm, double peak30MmPerH) {
            double energy = RainErosion.hourEnergyMjPerHa(rainMm, peak30MmPerH);
            stayingFraction[step] *= damage.stayingFraction(energy, peak30MmPerH);
            openFraction[step] *= 1 - damage.sealedFraction(energy, peak30MmPerH);
        }
    }
}
