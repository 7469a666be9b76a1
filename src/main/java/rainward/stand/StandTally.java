package rainward.stand;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Gathers what comes up on each trace, judges it by seeding hour, and sums up over traces. */
final class StandTally {
    private final StandCase question;
    private final StandCalendar.Later underWay;
    private final StandCalendar.Later waiting;
    private final int firstHour;
    private final double target;

    // One trace, by seeding hour.
    private final double[] up;
    private final double[] upWorth;
    private final double[] upHour;
    private final double[] open;
    private final double[] dry;

    // All traces, by seeding hour.
    private final double[] chance;
    private final double[] worth;
    private final double[] dead;
    private final double[] washed;
    private final double[] scorched;
    private final double[] stillDry;
    private final EmergenceHours emergence;

    StandTally(StandCase question, StandCalendar calendar) {
        this.question = question;
        underWay = calendar.underWay();
        waiting = calendar.waiting();
        firstHour = question.firstHour();
        target = question.mix().standTargetFraction();
        int count = question.hours().count();
        up = new double[count];
        upWorth = new double[count];
        upHour = new double[count];
        open = new double[count];
        dry = new double[count];
        chance = new double[count];
        worth = new double[count];
        dead = new double[count];
        washed = new double[count];
        scorched = new double[count];
        stillDry = new double[count];
        emergence = new EmergenceHours(count, waiting.hour() + 1);
    }

    void plants(int s, double stand, double standWorth, double standHour) {
        up[s] += stand;
        upWorth[s] += standWorth;
        upHour[s] += standHour;
    }

    void open(int s, double standUnderWay, double standWaiting) {
        open[s] += standUnderWay;
        dry[s] += standWaiting;
    }

    void losses(int s, double falseStart, double washOut, double heat, double waits) {
        dead[s] += falseStart;
        washed[s] += washOut;
        scorched[s] += heat;
        stillDry[s] += waits;
    }

    /** Judges the trace that was gathered and clears the table for the next. */
    void judge() {
        for (int s = 0; s < up.length; s++) {
            double came = Math.min(up[s], target);
            double comes = Math.min(open[s], target - came);
            double mayCome = Math.min(dry[s], target - came - comes);
            double meanWorth = up[s] > 0 ? upWorth[s] / up[s] : 0;
            worth[s] += (came * meanWorth
                            + comes * underWay.chance() * underWay.worth()
                            + mayCome * waiting.chance() * waiting.worth())
                    / target;
            chance[s] += chanceOf(s);
        }
        for (double[] gathered : List.of(up, upWorth, upHour, open, dry)) {
            Arrays.fill(gathered, 0);
        }
    }

    private double chanceOf(int s) {
        if (up[s] >= target) {
            emergence.add(s, (int) (upHour[s] / up[s]) - firstHour - s);
            return 1;
        }
        if (up[s] + open[s] >= target && underWay.chance() > 0) {
            emergence.add(s, underWay.hour() - firstHour - s);
            return underWay.chance();
        }
        return up[s] + open[s] + dry[s] >= target ? waiting.chance() : 0;
    }

    /** The outlook over all traces judged. */
    StandOutlook outlook(boolean[] sowable) {
        int traces = question.soil().traces();
        List<StandOutlook.EmergenceRange> ranges = new ArrayList<>();
        List<StandOutlook.Losses> losses = new ArrayList<>();
        for (int s = 0; s < chance.length; s++) {
            chance[s] = sowable[s] ? chance[s] / traces : 0;
            worth[s] = sowable[s] ? worth[s] / traces : 0;
            ranges.add(chance[s] > 0 ? range(s) : StandOutlook.EmergenceRange.NEVER);
            losses.add(new StandOutlook.Losses(
                    dead[s] / traces,
                    washed[s] / traces,
                    scorched[s] / traces,
                    stillDry[s] / traces));
        }
        return new StandOutlook(
                question.mix().name(), question.hours().start(), chance, worth, ranges, losses);
    }

    private StandOutlook.EmergenceRange range(int s) {
        if (emergence.none(s)) {
            double days = (waiting.hour() - firstHour - s) / 24.0;
            return new StandOutlook.EmergenceRange(days, days, days);
        }
        return new StandOutlook.EmergenceRange(
                emergence.quantileDays(s, 0.1),
                emergence.quantileDays(s, 0.5),
                emergence.quantileDays(s, 0.9));
    }
}
