package rainward.queue.shop;

import java.util.ArrayList;
import java.util.List;

/**
 * The open tasks of an item, in order.
 *
 * @param ready first minute at which the first may start
 * @param latest last minute at which the first may start, because of the work before it
 * @param tasks what is still to do
 */
public record Chain(int ready, int latest, List<Task> tasks) {

    /**
     * After a wait of this length other work should not stand still; chosen by experiment [min].
     */
    private static final int LONG_WAIT_MINUTES = 60;

    public Chain {
        tasks = List.copyOf(tasks);
    }

    /** The parts between long waits, so that machines can do other work during these. */
    List<Chain> parts() {
        List<Chain> parts = new ArrayList<>();
        int from = 0;
        for (int t = 1; t <= tasks.size(); t++) {
            if (t == tasks.size() || tasks.get(t).waits().least() >= LONG_WAIT_MINUTES) {
                parts.add(new Chain(
                        ready, from == 0 ? latest : Task.NO_LIMIT, tasks.subList(from, t)));
                from = t;
            }
        }
        return parts;
    }
}
