package rainward.queue.bound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rainward.queue.shop.OpenTime;

/**
 * A piece of work from start to finish.
 *
 * @param parts stretches that are worked, in order
 * @param overtimeMinutes among them
 */
record Stint(List<int[]> parts, int overtimeMinutes) {

    int start() {
        return parts.get(0)[0];
    }

    int finish() {
        return parts.get(parts.size() - 1)[1];
    }

    /**
     * All ways to work from a minute on: in one go, or over nights with each choice of days that
     * have overtime.
     *
     * @param open when work may go on
     * @param start in an open minute, or else there is no way
     * @param minutes of work
     */
    static List<Stint> from(OpenTime open, int start, int minutes) {
        int k = open.at(start);
        if (k >= open.count() || start < open.from(k) || start >= open.latest(k)) {
            return List.of();
        }
        if (minutes <= OpenTime.IN_ONE_GO_MINUTES) {
            boolean fits = start + minutes <= open.latest(k);
            return fits
                    ? List.of(NOTHING.with(start, start + minutes, open.regular(k)))
                    : List.of();
        }
        Rests rests = new Rests(open, new ArrayList<>());
        rests.go(k, new Begun(NOTHING, minutes, start, 0, 0));
        return rests.found;
    }

    private static final Stint NOTHING = new Stint(List.of(), 0);

    private Stint with(int from, int to, int regular) {
        List<int[]> more = new ArrayList<>(parts);
        more.add(new int[] {from, to});
        return new Stint(more, overtimeMinutes + Math.max(0, to - Math.max(from, regular)));
    }

    private boolean sameAs(Stint other) {
        return overtimeMinutes == other.overtimeMinutes
                && Arrays.deepEquals(
                        parts.toArray(int[][]::new), other.parts.toArray(int[][]::new));
    }

    /**
     * Work that was begun.
     *
     * @param done so far
     * @param left to do [min]
     * @param stopped when it last stopped; at first, when it is to start
     * @param late days that have overtime, a bit each
     * @param early days that have none
     */
    private record Begun(Stint done, int left, int stopped, long late, long early) {

        boolean untouched() {
            return done.parts().isEmpty();
        }
    }

    /** Follows work over one stretch after another, with and without overtime. */
    private record Rests(OpenTime open, List<Stint> found) {

        void go(int k, Begun begun) {
            if (k >= open.count()) {
                return;
            }
            long day = 1L << open.day(k);
            Begun late =
                    new Begun(begun.done, begun.left, begun.stopped, begun.late | day, begun.early);
            Begun early =
                    new Begun(begun.done, begun.left, begun.stopped, begun.late, begun.early | day);
            if ((late.late & late.early) == 0) {
                stretch(k, open.latest(k), late);
            }
            if ((early.late & early.early) == 0) {
                stretch(k, open.regular(k), early);
            }
        }

        private void stretch(int k, int end, Begun begun) {
            int begin = begun.untouched() ? begun.stopped : open.from(k);
            int ahead = end - begin;
            if (ahead >= begun.left) {
                add(begun.done.with(begin, begin + begun.left, open.regular(k)));
            } else if (begun.untouched() && ahead < OpenTime.LEAST_PART_MINUTES) {
                return;
            } else if (ahead <= 0) {
                go(k + 1, begun);
            } else if (begun.untouched()
                    || begin - begun.stopped <= OpenTime.GREATEST_PAUSE_MINUTES) {
                Stint more = begun.done.with(begin, end, open.regular(k));
                go(k + 1, new Begun(more, begun.left - ahead, end, begun.late, begun.early));
            }
        }

        private void add(Stint stint) {
            boolean rested = stint.parts.size() < 2
                    || stint.parts.get(stint.parts.size() - 1)[0]
                                    - stint.parts.get(stint.parts.size() - 2)[1]
                            <= OpenTime.GREATEST_PAUSE_MINUTES;
            if (rested && found.stream().noneMatch(stint::sameAs)) {
                found.add(stint);
            }
        }
    }
}
