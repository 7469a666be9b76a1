package rainward.stand.tally;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;
import rainward.stand.bed.StepGrid;

/** Gathers what comes up on each trace, judges it by seeding step, and sums up over traces. */
public final class StandTally {
    private final StandCase question;
    private final StandCalendar.UnderWay underWay;
    private final StepGrid grid;
    private final double target;

    // One trace, by seeding step.
    private final double[] up;
    private final double[] upWorth;
    private final double[] upStep;
    private final double[] open;

    // All traces, by seeding step.
    private final double[] chance;
    private final double[] worth;
    private final double[] dead;
    private final double[] washed;
    private final double[] scorched;
    private final double[] stillDry;
    private final EmergenceSteps emergence;

    public StandTally(StandCase question, StandCalendar calendar, StepGrid grid) {
        this.question = question;
        underWay = calendar.underWay();
        this.grid = grid;
        target = question.mix().standTargetFraction();
        int count = grid.seedingSteps();
        up = new double[count];
        upWorth = new double[count];
        upStep = new double[count];
        open = new double[count];
        chance = new double[count];
        worth = new double[count];
        dead = new double[count];
        washed = new double[count];
        scorched = new double[count];
        stillDry = new double[count];
        emergence = new EmergenceSteps(count, underWay.step() + 1);
    }

    /**
     * Adds one kind of seed on the trace that is gathered.
     *
     * @param sums by seeding step
     * @param standShare stand that a whole class makes
     * @param lossShare weight of a whole class among the losses
     */
    public void add(FateSums sums, double standShare, double lossShare) {
        sums.addPlants(sums.plants, standShare, up);
        sums.addPlants(sums.plantWorth, standShare, upWorth);
        sums.addPlants(sums.plantStep, standShare, upStep);
        sums.addLeft(sums.underWay, standShare, open);
        sums.addLeft(sums.waiting, lossShare, stillDry);
        FateSums.add(sums.dead, lossShare, dead);
        FateSums.add(sums.scorched, lossShare, scorched);
        sums.addWashed(lossShare, washed);
    }

    /** Judges the trace that was gathered and clears the table for the next. */
    public void judge() {
        for (int s = 0; s < up.length; s++) {
            double came = Math.min(up[s], target);
            double comes = underWay.counts() ? Math.min(open[s], target - came) : 0;
            double meanWorth = up[s] > 0 ? upWorth[s] / up[s] : 0;
            worth[s] += (came * meanWorth + comes * underWay.worth()) / target;
            chance[s] += chanceOf(s);
        }
        for (double[] gathered : List.of(up, upWorth, upStep, open)) {
            Arrays.fill(gathered, 0);
        }
    }

    private double chanceOf(int s) {
        if (up[s] >= target) {
            emergence.add(s, (int) (upStep[s] / up[s]) - grid.firstStep() - s);
            return 1;
        }
        if (underWay.counts() && up[s] + open[s] >= target) {
            emergence.add(s, underWay.step() - grid.firstStep() - s);
            return 1;
        }
        return 0;
    }

    /** The outlook over all traces judged, hour by hour. */
    public StandOutlook outlook(boolean[] sowable) {
        int traces = question.soil().traces();
        double[] hourlyChance = new double[sowable.length];
        double[] hourlyWorth = new double[sowable.length];
        List<StandOutlook.EmergenceRange> ranges = new ArrayList<>();
        List<StandOutlook.Losses> losses = new ArrayList<>();
        for (int h = 0; h < sowable.length; h++) {
            int s = grid.seedingStep(question.firstHour() + h);
            boolean grows = sowable[h] && chance[s] > 0;
            hourlyChance[h] = sowable[h] ? chance[s] / traces : 0;
            hourlyWorth[h] = sowable[h] ? worth[s] / traces : 0;
            ranges.add(grows ? range(s) : StandOutlook.EmergenceRange.NEVER);
            losses.add(new StandOutlook.Losses(
                    dead[s] / traces,
                    washed[s] / traces,
                    scorched[s] / traces,
                    stillDry[s] / traces));
        }
        return new StandOutlook(
                question.mix().name(),
                question.hours().start(),
                hourlyChance,
                hourlyWorth,
                ranges,
                losses);
    }

    private StandOutlook.EmergenceRange range(int s) {
        return new StandOutlook.EmergenceRange(days(s, 0.1), days(s, 0.5), days(s, 0.9));
    }

    /** Middle of the step in which that share of traces is up [d]. */
    private double days(int s, double share) {
        return (emergence.quantile(s, share) + 0.5) * grid.days();
    }
}
