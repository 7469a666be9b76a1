package rainward.stand.bed;

import java.util.Arrays;
import rainward.stand.SeedPlacement;
import rainward.stand.StandCase;

/**
 * Some traces turned from rows of hours into columns of steps, one trace after the other in memory,
 * so that what follows one seed through time stays in the cache.
 */
public final class TraceColumns {
    /** Traces that share the cache lines of their rows. */
    public static final int WIDTH = 8;

    /** Bursts below this do nothing to a seedbed [mm/h]; chosen here, no source. */
    private static final double GENTLE_MM_PER_H = 5;

    private final StandCase question;
    private final SurfaceDamage damage;
    private final StepGrid grid;
    private final StepMeans means;
    private final double perContact;
    private final Bursts bursts;
    private final Column[] columns;

    public TraceColumns(StandCase question, SurfaceDamage damage, StepGrid grid) {
        this.question = question;
        this.damage = damage;
        this.grid = grid;
        means = new StepMeans(question, grid);
        perContact = 1 / SeedPlacement.contact(question.conditions());
        bursts = new Bursts();
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
            columns[i].load(first + i);
        }
        for (int i = 0; i < count; i++) {
            bursts.fall(first + i, columns[i]);
        }
        question.later().ifPresent(later -> {
            for (int i = 0; i < count; i++) {
                loadRain(later, later.courseOf()[first + i], columns[i]);
            }
        });
        return count;
    }

    private void loadRain(StandCase.Later later, int course, Column column) {
        int before = question.traces().hours();
        double[][] peak = later.traces().peak30MmPerH();
        for (int hour = 0; before + hour < grid.hour(grid.steps()); hour++) {
            if (peak[hour][course] > GENTLE_MM_PER_H) {
                double rainMm = later.traces().rainMm()[hour][course];
                int step = (before + hour) / grid.stepHours();
                column.burst(step, rainMm, peak[hour][course]);
            }
        }
    }

    /**
     * The hard hours of each trace as a chain: weather is looked through once, hour by hour as it
     * lies in memory, and few hours are kept.
     */
    private final class Bursts {
        private static final int END = -1;
        private final int[] firstOf = new int[question.traces().count()];
        private int[] hourOf = new int[64];
        private int[] nextOf = new int[64];
        private int count;

        /** From the last hour to the first, so that each chain runs forward in time. */
        Bursts() {
            Arrays.fill(firstOf, END);
            int hours = Math.min(question.traces().hours(), grid.hour(grid.steps()));
            for (int hour = hours - 1; hour >= 0; hour--) {
                double[] peak = question.traces().peak30MmPerH()[hour];
                for (int trace = 0; trace < peak.length; trace++) {
                    if (peak[trace] > GENTLE_MM_PER_H) {
                        keep(trace, hour);
                    }
                }
            }
        }

        private void keep(int trace, int hour) {
            if (count == hourOf.length) {
                hourOf = Arrays.copyOf(hourOf, 2 * count);
                nextOf = Arrays.copyOf(nextOf, 2 * count);
            }
            hourOf[count] = hour;
            nextOf[count] = firstOf[trace];
            firstOf[trace] = count++;
        }

        void fall(int trace, Column column) {
            for (int at = firstOf[trace]; at != END; at = nextOf[at]) {
                int hour = hourOf[at];
                column.burst(
                        hour / grid.stepHours(),
                        question.traces().rainMm()[hour][trace],
                        question.traces().peak30MmPerH()[hour][trace]);
            }
        }
    }

    /** One trace, by step. */
    public final class Column {
        public final double[] potentialMpa;

        /** What the seed feels of it through its contact with the soil. */
        public final double[] feltPotentialMpa;

        public final double[] tempC;

        private final double[] surfaceTempC;
        private final double[] dryFrontCm;

        /** Share of seed that rills leave in place. */
        public final double[] stayingFraction;

        /** Share of small seed that is not sealed in. */
        public final double[] openFraction;

        private double hottestC;
        private double deepestDryCm;
        private boolean rained;
        private int trace;

        Column(int steps) {
            potentialMpa = new double[steps];
            feltPotentialMpa = new double[steps];
            tempC = new double[steps];
            surfaceTempC = new double[steps];
            dryFrontCm = new double[steps];
            stayingFraction = new double[steps];
            openFraction = new double[steps];
            Arrays.fill(stayingFraction, 1);
            Arrays.fill(openFraction, 1);
        }

        /** Copied when asked for: few traces get hot enough to matter. */
        public double[] surfaceTempC() {
            means.surfaceTempC.copy(trace, surfaceTempC);
            return surfaceTempC;
        }

        /** Copied when asked for: only traces that dry to the seed need it. */
        public double[] dryFrontCm() {
            means.dryFrontCm.copy(trace, dryFrontCm);
            return dryFrontCm;
        }

        /** Greatest temperature of the surface on this trace. */
        public double hottestC() {
            return hottestC;
        }

        /** How far the drying front gets on this trace. */
        public double deepestDryCm() {
            return deepestDryCm;
        }

        /** True where rain was hard enough once to move or seal seed. */
        public boolean rained() {
            return rained;
        }

        private void load(int trace) {
            means.potentialMpa.copy(trace, potentialMpa);
            for (int t = 0; t < potentialMpa.length; t++) {
                feltPotentialMpa[t] = potentialMpa[t] * perContact;
            }
            means.tempC.copy(trace, tempC);
            this.trace = trace;
            hottestC = means.hottestC[trace];
            deepestDryCm = means.deepestDryCm[trace];
            if (rained) {
                Arrays.fill(stayingFraction, 1);
                Arrays.fill(openFraction, 1);
                rained = false;
            }
        }

        private void burst(int step, double rainMm, double peak30MmPerH) {
            rained = true;
            double energy = RainErosion.hourEnergyMjPerHa(rainMm, peak30MmPerH);
            stayingFraction[step] *= damage.stayingFraction(energy, peak30MmPerH);
            openFraction[step] *= 1 - damage.sealedFraction(energy, peak30MmPerH);
        }
    }
}
