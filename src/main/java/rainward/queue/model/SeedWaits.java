package rainward.queue.model;

import java.util.ArrayList;
import java.util.List;
import rainward.queue.shop.OpenTime;
import rainward.queue.shop.Task;
import rainward.queue.shop.Yield;

/**
 * When a field's seed may be told to wait: starts that are better than all before them. The last
 * start that still fits ahead of the close of a day or of the ground is tried, and those a few
 * hours ahead of it, for the fields that have to go in one after the other.
 */
final class SeedWaits {

    private static final int MOST = 8;

    /** Fields of an hour or two follow each other in such steps; chosen by experiment [min]. */
    private static final int STEP_MINUTES = 120;

    /** A later start is worth trying where it is better by this factor; chosen by experiment. */
    private static final double BETTER = 1.02;

    private SeedWaits() {}

    /** Minutes before which seed waits, in order of time; the first is zero, no wait. */
    static int[] of(Task seeding) {
        if (seeding.seeds().isEmpty() || seeding.hands().isEmpty()) {
            return new int[] {0};
        }
        Yield yield = seeding.seeds().get();
        Task.Hand hand = seeding.hands().get(0);
        List<Integer> better = new ArrayList<>();
        double best = 0;
        for (int start : fitting(hand.open(), hand.minutes())) {
            double worth = worth(yield, start, start + hand.minutes());
            if (worth > best * BETTER) {
                if (best > 0) {
                    better.add(start);
                }
                best = worth;
            }
        }
        int skip = Math.max(0, better.size() - MOST);
        int[] starts = new int[1 + better.size() - skip];
        for (int i = 1; i < starts.length; i++) {
            starts[i] = better.get(i - 1 + skip);
        }
        return starts;
    }

    private static List<Integer> fitting(OpenTime open, int minutes) {
        List<Integer> starts = new ArrayList<>();
        for (int k = 0; k < open.count(); k++) {
            int room = open.regular(k) - open.from(k) - minutes;
            if (room >= 0) {
                for (int ahead = room / STEP_MINUTES * STEP_MINUTES;
                        ahead >= 0;
                        ahead -= STEP_MINUTES) {
                    starts.add(open.from(k) + room - ahead);
                }
            } else if (minutes > OpenTime.IN_ONE_GO_MINUTES) {
                starts.add(open.from(k));
            }
        }
        return starts;
    }

    private static double worth(Yield yield, int start, int finish) {
        double best = 0;
        for (int o = 0; o < yield.options(); o++) {
            best = Math.max(best, yield.worth(o, start, finish));
        }
        return best;
    }
}
