package rainward.queue.search;

/**
 * Turns a genome into its value. An implementation remembers the genome kept last, so that a try
 * which differs from it only behind some position need not look at what comes before.
 */
public interface Decoding {

    /** How many items are ordered. */
    int items();

    /**
     * How many of them stand first, ahead of the others: items {@code 0} to {@code pinned() - 1}.
     */
    int pinned();

    /** How many choices gene {@code gene} has; at least one. */
    int choices(int gene);

    /** How many genes there are; gene {@code g < items()} belongs to item {@code g}. */
    int genes();

    /**
     * Value of a genome; more is better.
     *
     * @param genome to be valued
     * @param firstChanged first position of its order that differs from the genome kept last, in
     *     item or in choice; zero where a gene of no item differs
     * @return its value
     */
    double tryOut(Genome genome, int firstChanged);

    /** Keeps the genome tried last. */
    void keep();
}
