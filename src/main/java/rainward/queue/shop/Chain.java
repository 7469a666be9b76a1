package rainward.queue.shop;

import java.util.List;

/**
 * The open tasks of an item, in order.
 *
 * @param ready first minute at which the first may start
 * @param latest last minute at which the first may start, because of the work before it
 * @param tasks what is still to do
 */
public record Chain(int ready, int latest, List<Task> tasks) {

    public Chain {
        tasks = List.copyOf(tasks);
    }
}
