package rainward.queue.shop;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** How much an item may cost beyond what it earns. */
final class Margins {

    private final List<Item> items;
    private final double[] mayLoseHa;
    private final double pinnedLostHa;

    Margins(List<Item> items, int[] site) {
        this.items = items;
        mayLoseHa = new double[items.size()];
        Arrays.setAll(mayLoseHa, item -> neighboursEarn(item, site));
        pinnedLostHa = 1 + items.stream().mapToDouble(Item::mostEarned).sum();
    }

    /** The most that all others at the place of an item can earn [ha]. */
    private double neighboursEarn(int item, int[] site) {
        return IntStream.range(0, site.length)
                .filter(other -> other != item && site[other] == site[item])
                .mapToDouble(other -> items.get(other).mostEarned())
                .sum();
    }

    /**
     * An item may cost more than it earns where its neighbours can make up for it: the first at a
     * place bears the drive of all machines.
     */
    boolean allow(int item, double gainHa) {
        return gainHa > -mayLoseHa[item] || items.get(item).first();
    }

    /** What a pinned item that is left out costs: more than all others can earn [ha]. */
    double pinnedLostHa() {
        return pinnedLostHa;
    }
}
