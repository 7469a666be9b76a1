package rainward.queue.shop;

import java.util.List;

/**
 * Something that has a place in the order: a field.
 *
 * @param first true where it stands before all that are not
 * @param underWay work that goes on now and comes before everything; a chain of one task or none
 * @param chains ways to finish it, tried in turn: as it stands, then with earlier work done again
 * @param starts minutes before which seed may be told to wait; the first is zero, no wait
 * @param keeping what it earns without its seed
 */
public record Item(
        boolean first, List<Task> underWay, List<Chain> chains, int[] starts, Keeping keeping) {

    public Item {
        underWay = List.copyOf(underWay);
        chains = List.copyOf(chains);
    }

    /** An item that earns nothing without its seed. */
    public Item(boolean first, List<Task> underWay, List<Chain> chains, int[] starts) {
        this(first, underWay, chains, starts, Keeping.NOTHING);
    }

    /** Place of its first task; below zero: it has none. */
    int site() {
        return chains.get(0).tasks().stream().mapToInt(Task::site).findFirst().orElse(-1);
    }

    boolean keepsSeed() {
        return keeping.readyHa() > 0;
    }

    /** Nothing that others can earn makes up for a pinned item that is left out. */
    double mostEarned() {
        return chains.stream()
                .flatMap(c -> c.tasks().stream())
                .flatMap(t -> t.seeds().stream())
                .mapToDouble(Yield::weight)
                .max()
                .orElse(0);
    }

    /**
     * Work before seeding may be worth doing though the seed is kept for later days.
     *
     * @param readyHa what that earns [ha of full stand]
     * @param until minute at which the seed must still be free to go in
     */
    public record Keeping(double readyHa, int until) {

        static final Keeping NOTHING = new Keeping(0, 0);
    }
}
