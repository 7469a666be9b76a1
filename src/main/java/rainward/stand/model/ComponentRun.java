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

    private final double[] progress;

    /** Seeding steps that differ: one for each run of steps too dry for any class. */
    private final int[] begins;

    private final SeedSums sums;

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
        progress = new double[grid.steps()];
        begins = new int[grid.seedingSteps()];
        sums = new SeedSums(grid.seedingSteps());
    }

    /** Runs along a trace and adds what comes of it to the tally. */
    void run(TraceColumns.Column trace, double[] worthByStep, StandTally tally) {
        if (tooDeep) {
            return;
        }
        kept.run(trace);
        fates.reckon(trace, kept, worthByStep, basePotentialsMpa[0]);
        soak(progress, basePotentialsMpa[0], kept.startingMpa, kept.progressPerMpa);
        int count = tellApart();
        sums.clear(count);
        walk(count);
        for (int k = 1; k < basePotentialsMpa.length; k++) {
            soak(progress, basePotentialsMpa[k], kept.startingMpa, kept.progressPerMpa);
            walk(count);
        }
        hand(count, tally);
    }

    /**
     * A step too dry for the first class changes nothing for those who wait through it: only the
     * first seeding step of such a run is walked. Gives how many there are.
     */
    private int tellApart() {
        int count = 1;
        begins[0] = 0;
        for (int s = 1; s < grid.seedingSteps(); s++) {
            if (progress[grid.firstStep() + s - 1] > 0) {
                begins[count++] = s;
            }
        }
        return count;
    }

    private static void soak(
            double[] progress, double basePotentialMpa, double[] startingMpa, double[] perMpa) {
        for (int t = 0; t < progress.length; t++) {
            progress[t] = Math.max(0, startingMpa[t] - basePotentialMpa) * perMpa[t];
        }
    }

    /** One class of the seed lot along all seeding steps. */
    private void walk(int count) {
        double[] of = progress;
        int last = of.length - 1;
        boolean moistAtEnd = of[last] > 0;
        int g = grid.firstStep() - 1;
        double done = 0;
        for (int j = 0; j < count; j++) {
            if (j > 0) {
                done -= of[grid.firstStep() + begins[j] - 1];
            }
            while (done < 1 && g < last) {
                g++;
                done += of[g];
            }
            if (done >= 1) {
                sums.add(j, fates, g);
            } else {
                sums.open(j, moistAtEnd);
            }
        }
    }

    private void hand(int count, StandTally tally) {
        for (int j = 0; j < count; j++) {
            int end = j + 1 < count ? begins[j + 1] : grid.seedingSteps();
            for (int s = begins[j]; s < end; s++) {
                hand(s, j, tally);
            }
        }
    }

    private void hand(int s, int j, StandTally tally) {
        double classes = basePotentialsMpa.length;
        double before = 1 / kept.rain[grid.firstStep() + s];
        double leftAtEnd = kept.rain[grid.steps()] * before;
        double plants = share.plantShare() / classes;
        double came = plants * before;
        double underWay = sums.underWay(j);
        double waiting = sums.waiting(j);
        tally.plants(s, came * sums.plants(j), came * sums.plantWorth(j), came * sums.plantStep(j));
        tally.open(s, plants * leftAtEnd * underWay);
        double lost = sums.dead(j) + sums.scorched(j);
        double washed =
                classes - (lost + (underWay + waiting) * leftAtEnd) - before * sums.plants(j);
        double weight = share.weight() / classes;
        tally.losses(
                s,
                weight * sums.dead(j),
                weight * washed,
                weight * sums.scorched(j),
                weight * leftAtEnd * waiting);
    }
}
