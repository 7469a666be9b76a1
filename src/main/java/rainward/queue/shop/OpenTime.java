package rainward.queue.shop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * When work may go on: stretches in order of time, in minutes from the start of the horizon. Each
 * lies within one working day and may go on into overtime.
 */
public final class OpenTime {

    /** Work of at most this length is done in one go, never left overnight [min]. */
    public static final int IN_ONE_GO_MINUTES = 240;

    /** Longer work is not begun with less than this ahead [min]. */
    public static final int LEAST_PART_MINUTES = 60;

    /** Longer work may rest over a night, not over a day [min]. */
    public static final int GREATEST_PAUSE_MINUTES = 16 * 60;

    private final int[] from;
    private final int[] to;
    private final int[] late;
    private final int[] day;
    private final int[] firstInHour;

    /** Takes stretches in order of time that do not overlap. */
    public OpenTime(List<Stretch> stretches) {
        from = stretches.stream().mapToInt(Stretch::from).toArray();
        to = stretches.stream().mapToInt(Stretch::to).toArray();
        late = stretches.stream().mapToInt(Stretch::late).toArray();
        day = stretches.stream().mapToInt(Stretch::day).toArray();
        firstInHour = new int[from.length == 0 ? 1 : late[late.length - 1] / 60 + 2];
        int next = 0;
        for (int hour = 0; hour < firstInHour.length; hour++) {
            while (next < late.length && late[next] <= hour * 60) {
                next++;
            }
            firstInHour[hour] = next;
        }
    }

    /**
     * One stretch.
     *
     * @param from first minute
     * @param to end of the shift, or of the ground being fit if that is sooner
     * @param late end with overtime, not before {@code to}
     * @param day index of the working day, for overtime
     */
    public record Stretch(int from, int to, int late, int day) {}

    /** Open time that is also inside the given spans {@code [from, to)}, which are in order. */
    public OpenTime within(int[][] spans) {
        List<Stretch> shared = new ArrayList<>();
        for (int k = 0; k < from.length; k++) {
            for (int[] span : spans) {
                int begin = Math.max(from[k], span[0]);
                int end = Math.min(late[k], span[1]);
                if (end > begin) {
                    int regular = Math.max(begin, Math.min(to[k], span[1]));
                    shared.add(new Stretch(begin, regular, end, day[k]));
                }
            }
        }
        return new OpenTime(shared);
    }

    /** Sets the minutes of every stretch. */
    public void mark(BitSet minutes) {
        for (int k = 0; k < count(); k++) {
            minutes.set(from(k), latest(k));
        }
    }

    public int count() {
        return from.length;
    }

    public int from(int stretch) {
        return from[stretch];
    }

    /** End of the stretch where all overtime is used. */
    public int latest(int stretch) {
        return late[stretch];
    }

    /** End of the stretch where no overtime is used. */
    public int regular(int stretch) {
        return to[stretch];
    }

    /** Working day that the stretch lies in. */
    public int day(int stretch) {
        return day[stretch];
    }

    /** End of the stretch on a plan that does or does not use the day's overtime. */
    public int end(int stretch, boolean[] overtime) {
        return overtime[day[stretch]] ? late[stretch] : to[stretch];
    }

    /** First stretch that may hold minute {@code minute} or a later one. */
    public int at(int minute) {
        int hour = minute / 60;
        return hour < firstInHour.length ? firstInHour[hour] : from.length;
    }

    /** Minutes of overtime among {@code [start, finish)}. */
    public int overtimeMinutes(int start, int finish, boolean[] overtime) {
        int sum = 0;
        for (int k = at(start); k < from.length && from[k] < finish; k++) {
            sum += Math.max(0, Math.min(end(k, overtime), finish) - Math.max(to[k], start));
        }
        return sum;
    }

    /** Stretches of {@code [start, finish)} that are open, as pairs of first minute and end. */
    public List<int[]> parts(int start, int finish, boolean[] overtime) {
        List<int[]> parts = new ArrayList<>();
        for (int k = at(start); k < from.length && from[k] < finish; k++) {
            int begin = Math.max(from[k], start);
            int end = Math.min(end(k, overtime), finish);
            boolean goesOn = !parts.isEmpty() && parts.get(parts.size() - 1)[1] == begin;
            if (end > begin && goesOn) {
                parts.get(parts.size() - 1)[1] = end;
            } else if (end > begin) {
                parts.add(new int[] {begin, end});
            }
        }
        return parts;
    }

    /** The longest stretch, overtime counted in [min]. */
    public int longestMinutes() {
        int longest = 0;
        for (int k = 0; k < from.length; k++) {
            longest = Math.max(longest, late[k] - from[k]);
        }
        return longest;
    }

    @Override
    public String toString() {
        return Arrays.toString(from) + " to " + Arrays.toString(late);
    }
}
