package rainward.queue.bound;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import rainward.queue.shop.OpenTime;

/**
 * The minutes in which a machine may work or drive, counted through without the pauses between. The
 * one after the last stands for the end of the horizon.
 */
final class OpenMinutes {

    private final int half;
    private final int[] minute;
    private final int[] next;
    private final int[] driveUntil;

    /**
     * Counts through.
     *
     * @param work when it may work on some field
     * @param drive when somebody may drive it on the road
     * @param grid every how many minutes are looked at [min]
     */
    OpenMinutes(List<OpenTime> work, List<OpenTime> drive, int grid) {
        half = grid / 2;
        BitSet roads = union(drive);
        BitSet open = union(work);
        open.or(roads);
        minute = open.stream().filter(m -> m % grid == 0).toArray();
        next = new int[open.length() + 1];
        driveUntil = new int[minute.length];
        Arrays.fill(next, minute.length);
        for (int i = minute.length - 1; i >= 0; i--) {
            next[minute[i]] = i;
            driveUntil[i] = roads.nextClearBit(minute[i]);
        }
        for (int m = next.length - 2; m >= 0; m--) {
            next[m] = Math.min(next[m], next[m + 1]);
        }
    }

    private static BitSet union(List<OpenTime> times) {
        BitSet all = new BitSet();
        times.forEach(time -> time.mark(all));
        return all;
    }

    int count() {
        return minute.length;
    }

    /** Minute of the horizon that stands at an index. */
    int minute(int index) {
        return minute[index];
    }

    /** Index of the first open minute not before a minute of the horizon, or nearest to it. */
    int notBefore(int minuteOfHorizon) {
        int from = Math.max(0, minuteOfHorizon - half);
        return from < next.length ? next[from] : minute.length;
    }

    /** End of the stretch of road hours that an index lies in; the minute itself: none [min]. */
    int driveUntil(int index) {
        return driveUntil[index];
    }
}
