package rainward.queue.search;

/**
 * Turns a genome into its value. An implementation remembers the genome kept last, so that a try
 * which differs from it only behind some position need not look at what comes before.
 */
public interface Decoding {

    /** How many items there are. */
    int items();

    /** How many places an order has; an item may stand at several, each time for its next part. */
    int places();

    /** Items of the same kinship go well together, side by side: they lie at one place. */
    int kinship(int item);

    /** How many places at the front belong to items that stand ahead of all others. */
    int pinned();

    /** How many choices gene {@code gene} has; at least one. */
    int choices(int gene);

    /** How many genes there are; gene {@code g < items()} belongs to item {@code g}. */
    int genes();

    /**
     * Value of a genome; more is better.
     *
     * @param genome to be valued
     * @param change where its order differs from that of the genome kept last, in item or in
     *     choice; everywhere, where a gene of no item differs
     * @return its value
     */
    double tryOut(Genome genome, Change change);

    /**
     * Positions that have changed.
     *
     * @param first of them
     * @param last of them
     */
    record Change(int first, int last) {

        /** Nothing is known to be as it was. */
        public static final Change EVERYWHERE = new Change(0, Integer.MAX_VALUE);
    }

    /** Keeps the genome tried last. */
    void keep();
}
