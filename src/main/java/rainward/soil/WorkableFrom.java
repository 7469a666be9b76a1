package rainward.soil;

import java.util.Arrays;
import java.util.OptionalInt;

/**
 * The first hour from which the ground is fit to work, on each trace.
 *
 * @param hours index of that hour by trace; the number of hours of the run where it never comes
 * @param runHours hours of the run
 */
public record WorkableFrom(int[] hours, int runHours) {

    /** Looks from an hour of a run on. */
    public static WorkableFrom of(SoilRun run, int fromHour) {
        boolean[][] workable = run.surface().workable();
        int[] first = new int[run.traces()];
        for (int i = 0; i < first.length; i++) {
            int h = fromHour;
            while (h < run.hours() && !workable[h][i]) {
                h++;
            }
            first[i] = h;
        }
        return new WorkableFrom(first, run.hours());
    }

    /** Share of traces on which the ground has been fit by the end of an hour, 0 to 1. */
    public double chanceBy(int hour) {
        return Arrays.stream(hours).filter(h -> h <= hour).count() / (double) hours.length;
    }

    /** The first hour by which the ground has been fit with a chance; empty where it never is. */
    public OptionalInt hourWithChance(double chance) {
        int[] sorted = Arrays.stream(hours).sorted().toArray();
        int at = Math.max(0, (int) Math.ceil(chance * sorted.length) - 1);
        return sorted[at] < runHours ? OptionalInt.of(sorted[at]) : OptionalInt.empty();
    }
}
