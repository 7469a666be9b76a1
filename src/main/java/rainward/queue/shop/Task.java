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
     * @param told when it was to begin
     * @param price of moving it
     */
    public record Habit(int id, int machine, int before, Told told, double price) {

        /** A start that differs by less is no change [min]. */
        public static final int SAME_START_MINUTES = 120;

        /**
         * A start that was given out.
         *
         * @param start [min]
         * @param dayFrom first minute of the farm's day that it lies in
         * @param dayTo end of that day [min]
         */
        public record Told(int start, int dayFrom, int dayTo) {}

        /** Of a task that was in no order. */
        public static Habit none(int id) {
            return new Habit(id, -1, -1, new Told(0, 0, 0), 0);
        }

        /** True where a crew would say that nothing has moved: not the day, nor the turn. */
        public boolean keptBy(int onMachine, int after, int begin) {
            return machine == onMachine
                    && begin >= told.dayFrom
                    && begin < told.dayTo
                    && (before == after || Math.abs(begin - told.start) <= SAME_START_MINUTES);
        }
    }
}
