package rainward.queue.shop;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * A stage of an item as the search sees it.
 *
 * @param stage index in the item's recipe
 * @param site index of the place where it is done
 * @param waits after the task before it
 * @param hands who may do it
 * @param seeds what it earns, for the one task that earns
 * @param habit where it was in the order given out before
 */
public record Task(
        int stage, int site, Waits waits, List<Hand> hands, Optional<Yield> seeds, Habit habit) {

    public Task {
        hands = List.copyOf(hands);
    }

    /** A wait that has no greatest length. */
    public static final int NO_LIMIT = Integer.MAX_VALUE;

    /**
     * From the end of the task before to the start of this one.
     *
     * @param least [min]
     * @param greatest {@link #NO_LIMIT} where there is none [min]
     * @param sparedBy hours in which the task before may end so that this one need not be done
     */
    public record Waits(int least, int greatest, BitSet sparedBy) {}

    /**
     * A machine with somebody to run it.
     *
     * @param machine index
     * @param person index
     * @param minutes of work
     * @param open when both may work there
     */
    public record Hand(int machine, int person, int minutes, OpenTime open) {}

    /**
     * Its place in the order given out before.
     *
     * @param id of the task, unique over all items
     * @param machine it was given to; below zero: it was in no order
     * @param before id of the task before it on that machine; below zero: none
     * @param start when it was to begin [min]
     * @param price of moving it
     */
    public record Habit(int id, int machine, int before, int start, double price) {

        /** A start that differs by less is no change [min]. */
        public static final int SAME_START_MINUTES = 120;

        /** True where a crew would say that nothing has moved. */
        public boolean keptBy(int onMachine, int after, int begin) {
            return machine == onMachine
                    && (before == after || Math.abs(begin - start) <= SAME_START_MINUTES);
        }
    }
}
