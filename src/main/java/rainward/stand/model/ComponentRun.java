package rainward.stand.model;

import rainward.farm.MixComponent;
import rainward.farm.Species;
import rainward.stand.StandCase;
import rainward.stand.StandRules;
import rainward.stand.bed.StepGrid;
import rainward.stand.bed.TraceColumns;
import rainward.stand.seedling.HydrothermalTime;
import rainward.stand.seedling.Kept;
import rainward.stand.seedling.SeedlingFates;
import rainward.stand.tally.StandTally;

/**
 * One kind of seed of a mix on one trace, for all seeding steps: the classes of the seed lot
 * germinate, their fates are looked up, and what comes up is added to the tally.
 *
 * <p>A seed put in at step {@code s} germinates in the first step {@code g} by which the progress
 * from {@code s} to {@code g} adds up to 1. The progress of a step does not depend on {@code s}, so
 * {@code g} only moves on as {@code s} does, and one walk along the trace serves all {@code s}.
 */
public final class ComponentRun {
    private final StepGrid grid;
    private final ComponentShare share;
    private final double[] basePotentialsMpa;
    private final Kept kept;
    private final SeedlingFates fates;
    private final boolean tooDeep;

    // By class: progress of each step, progress since seeding, and the step reached.
    private final double[][] progress;
    private final double[] done;
    private final int[] reached;

    public ComponentRun(
            StandCase question, MixComponent component, StandRules rules, StepGrid grid) {
        Species species = component.species();
        double depthCm = question.soil().seedZone().depthCm();
        int classes = rules.grain().seedClasses();
        this.grid = grid;
        share = ComponentShare.of(question, component, rules);
        basePotentialsMpa = new HydrothermalTime(species).basePotentialsMpa(classes);
        kept = new Kept(species, grid, rules.seedling());
        fates = new SeedlingFates(species, depthCm, grid, rules.seedling());
        tooDeep = depthCm > species.emergence().greatestDepthCm();
        progress = new double[classes][grid.steps()];
        done = new double[classes];
        reached = new int[classes];
    }

    /** Runs along a trace and adds what comes of it to the tally. */
    public void run(TraceColumns.Column trace, double[] worthByStep, StandTally tally) {
        if (tooDeep) {
            return;
        }
        kept.run(trace);
        fates.reckon(trace, kept, worthByStep, basePotentialsMpa[0]);
        for (int k = 0; k < progress.length; k++) {
            soak(progress[k], basePotentialsMpa[k], kept.startingMpa, kept.progressPerMpa);
            done[k] = 0;
            reached[k] = grid.firstStep() - 1;
        }
        SeedSum sum = new SeedSum();
        for (int s = 0; s < grid.seedingSteps(); s++) {
            int seededAt = grid.firstStep() + s;
            // A step too dry for the first class changes nothing for those who wait through it.
            if (s == 0 || progress[0][seededAt - 1] > 0) {
                sum.clear();
                germinate(sum);
            }
            leaveBehind(seededAt);
            hand(s, sum, tally);
        }
    }

    private static void soak(
            double[] progress, double basePotentialMpa, double[] startingMpa, double[] perMpa) {
        for (int t = 0; t < progress.length; t++) {
            progress[t] = Math.max(0, startingMpa[t] - basePotentialMpa) * perMpa[t];
        }
    }

    private void germinate(SeedSum sum) {
        int last = grid.steps() - 1;
        for (int k = 0; k < progress.length; k++) {
            double[] of = progress[k];
            double sofar = done[k];
            int g = reached[k];
            while (sofar < 1 && g < last) {
                g++;
                sofar += of[g];
            }
            if (sofar >= 1) {
                sum.add(fates, g);
            } else if (of[last] > 0) {
                sum.underWay++;
            } else {
                sum.waiting++;
            }
            done[k] = sofar;
            reached[k] = g;
        }
    }

    private void leaveBehind(int step) {
        for (int k = 0; k < progress.length; k++) {
            done[k] -= progress[k][step];
        }
    }

    private void hand(int s, SeedSum sum, StandTally tally) {
        double classes = basePotentialsMpa.length;
        double before = 1 / kept.rain[grid.firstStep() + s];
        double leftAtEnd = kept.rain[grid.steps()] * before;
        double plants = share.plantShare() / classes;
        double came = plants * before;
        tally.plants(s, came * sum.plants, came * sum.worth, came * sum.step);
        tally.open(s, plants * leftAtEnd * sum.underWay, plants * leftAtEnd * sum.waiting);
        double open = sum.underWay + sum.waiting;
        double washed =
                classes - (sum.dead + sum.scorched + open * leftAtEnd) - before * sum.plants;
        double weight = share.weight() / classes;
        tally.losses(
                s,
                weight * sum.dead,
                weight * washed,
                weight * sum.scorched,
                weight * leftAtEnd * sum.waiting);
    }

    /** Classes of one seeding step, added up. */
    private static final class SeedSum {
        private double plants;
        private double worth;
        private double step;
        private double scorched;
        private double dead;
        private double underWay;
        private double waiting;

        void clear() {
            plants = 0;
            worth = 0;
            step = 0;
            scorched = 0;
            dead = 0;
            underWay = 0;
            waiting = 0;
        }

        void add(SeedlingFates fates, int g) {
            int at = g * SeedlingFates.STRIDE;
            plants += fates.fates[at];
            worth += fates.fates[at + 1];
            step += fates.fates[at + 2];
            scorched += fates.fates[at + 3];
            dead += fates.fates[at + 4];
            underWay += fates.fates[at + 5];
        }
    }
}
