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
import rainward.stand.tally.FateSums;
import rainward.stand.tally.StandTally;

/**
 * One kind of seed of a mix on one trace, for all seeding steps: the classes of the seed lot
 * germinate, their fates are looked up, and what comes up is added to the tally.
 */
public final class ComponentRun {
    private final StepGrid grid;
    private final ComponentShare share;
    private final double[] basePotentialsMpa;
    private final Kept kept;
    private final SeedlingFates fates;
    private final boolean tooDeep;

    /** Seeding steps that differ: one for each run of steps too dry for any class. */
    private final int[] begins;

    private final SeedWalk seeds;

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
        begins = new int[grid.seedingSteps()];
        seeds = new SeedWalk(classes, grid);
    }

    /** Runs along a trace and adds what comes of it to the tally. */
    void run(TraceColumns.Column trace, double[] worthByStep, StandTally tally) {
        if (tooDeep) {
            return;
        }
        kept.run(trace);
        fates.reckon(trace, kept, worthByStep, basePotentialsMpa[0]);
        for (int k = 0; k < basePotentialsMpa.length; k++) {
            seeds.soak(k, basePotentialsMpa[k], kept);
        }
        seeds.start();
        int count = tellApart(seeds.progressOfFirst());
        for (int j = 0; j < count; j++) {
            int end = j + 1 < count ? begins[j + 1] : grid.seedingSteps();
            seeds.sow(begins[j], end, fates);
        }
        hand(seeds.sums, tally);
    }

    /**
     * A step too dry for the first class changes nothing for those who wait through it: only the
     * first seeding step of such a run is walked. Gives how many there are.
     */
    private int tellApart(double[] progress) {
        int count = 1;
        begins[0] = 0;
        for (int s = 1; s < grid.seedingSteps(); s++) {
            if (progress[grid.firstStep() + s - 1] > 0) {
                begins[count++] = s;
            }
        }
        return count;
    }

    private void hand(FateSums sums, StandTally tally) {
        double classes = basePotentialsMpa.length;
        sums.rain(kept.rain, grid.firstStep());
        tally.add(sums, share.plantShare() / classes, share.weight() / classes);
    }
}
