package rainward.queue.shop;

import java.util.List;

/**
 * Something that has a place in the order: a field.
 *
 * @param first true where it stands before all that are not
 * @param underWay work that goes on now and comes before everything; a chain of one task or none
 * @param chains ways to finish it, tried in turn: as it stands, then with earlier work done again
 * @param starts minutes before which seed may be told to wait; the first is zero, no wait
 */
public record Item(boolean first, List<Task> underWay, List<Chain> chains, int[] starts) {

    public Item {
        underWay = List.copyOf(underWay);
        chains = List.copyOf(chains);
    }
}
