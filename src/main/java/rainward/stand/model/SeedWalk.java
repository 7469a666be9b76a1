package rainward.stand.model;

import java.util.Arrays;
import rainward.stand.bed.StepGrid;
import rainward.stand.seedling.Kept;
import rainward.stand.seedling.SeedlingFates;
import rainward.stand.tally.FateSums;

/**
 * The classes of a seed lot on one trace, from one seeding step to the next.
 *
 * <p>A seed put in at step {@code s} germinates in the first step {@code g} by which the progress
 * from {@code s} to {@code g} adds up to 1. The progress of a step does not depend on {@code s}, so
 * {@code g} only moves on as {@code s} does, and one walk along the trace serves all {@code s}. The
 * classes walk side by side: none has to wait for the sums of another.
 */
final class SeedWalk {

    private final StepGrid grid;
    private final double[][] progress;

    /** By class: the step it has got to, and the progress from the seeding step to there. */
    private final int[] reached;

    private final double[] done;

    /** By class: where its fate stands if it has not germinated by the end. */
    private final int[] open;

    /** What becomes of the classes by seeding step. */
    final FateSums sums;

    SeedWalk(int classes, StepGrid grid) {
        this.grid = grid;
        progress = new double[classes][grid.steps()];
        reached = new int[classes];
        done = new double[classes];
        open = new int[classes];
        sums = new FateSums(classes, grid.seedingSteps());
    }

    /** Finds the progress that a class makes in each step. */
    void soak(int k, double basePotentialMpa, Kept kept) {
        double[] of = progress[k];
        double[] startingMpa = kept.startingMpa;
        double[] perMpa = kept.progressPerMpa;
        for (int t = 0; t < of.length; t++) {
            of[t] = Math.max(0, startingMpa[t] - basePotentialMpa) * perMpa[t];
        }
        boolean moist = of[of.length - 1] > 0;
        open[k] = moist ? SeedlingFates.UNDER_WAY : SeedlingFates.WAITING;
    }

    /** Progress by step of the class that starts in the driest soil. */
    double[] progressOfFirst() {
        return progress[0];
    }

    /** Goes back to the first seeding step. */
    void start() {
        Arrays.fill(reached, grid.firstStep() - 1);
    }

    /**
     * Sows in a seeding step and adds up what becomes of the classes. Those that follow fare alike
     * where no class makes progress before them.
     *
     * @param from step sown in; since the one before it only the last step made progress
     * @param to first step that fares otherwise
     * @param fates by step of germination
     */
    void sow(int from, int to, SeedlingFates fates) {
        double[] of = fates.fates;
        double plants = 0;
        double worth = 0;
        double step = 0;
        double scorched = 0;
        double dead = 0;
        double underWay = 0;
        double waiting = 0;
        for (int k = 0; k < done.length; k++) {
            int at = germinate(k, from) * SeedlingFates.STRIDE;
            plants += of[at];
            worth += of[at + 1];
            step += of[at + 2];
            scorched += of[at + 3];
            dead += of[at + 4];
            underWay += of[at + 5];
            waiting += of[at + 6];
        }
        for (int s = from; s < to; s++) {
            sums.plants[s] = plants;
            sums.plantWorth[s] = worth;
            sums.plantStep[s] = step;
            sums.scorched[s] = scorched;
            sums.dead[s] = dead;
            sums.underWay[s] = underWay;
            sums.waiting[s] = waiting;
        }
    }

    /** Row of the fate of a class sown in a step. */
    private int germinate(int k, int s) {
        double[] of = progress[k];
        double sum = s > 0 ? done[k] - of[grid.firstStep() + s - 1] : 0;
        int g = reached[k];
        while (sum < 1 && g < of.length - 1) {
            g++;
            sum += of[g];
        }
        done[k] = sum;
        reached[k] = g;
        return sum >= 1 ? SeedlingFates.GERMINATED + g : open[k];
    }
}
