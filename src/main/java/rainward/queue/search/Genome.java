package rainward.queue.search;

/**
 * What the search varies: an order of items and a choice for each gene.
 *
 * @param order every item as often as it has parts
 * @param choices one for each gene
 */
public record Genome(int[] order, int[] choices) {

    public Genome copy() {
        return new Genome(order.clone(), choices.clone());
    }
}
