package rainward.queue.shop;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** The parts into which long waits cut items, so that an item may stand at several places. */
public final class ItemParts {

    private final Chain[][] parts;

    ItemParts(List<Item> items) {
        parts = items.stream().map(ItemParts::cut).toArray(Chain[][]::new);
    }

    /** Only an item with one way to finish it has parts: others may have to begin again. */
    private static Chain[] cut(Item item) {
        List<Chain> ways = item.chains();
        return ways.size() > 1 || !item.underWay().isEmpty()
                ? new Chain[] {ways.get(0)}
                : ways.get(0).parts().toArray(Chain[]::new);
    }

    /** How many parts an item has. */
    public int of(int item) {
        return parts[item].length;
    }

    Chain of(int item, int part) {
        return parts[item][part];
    }

    /** Which part of an item a stage belongs to. */
    public int part(int item, int stage) {
        int part = parts[item].length - 1;
        while (part > 0 && parts[item][part].tasks().get(0).stage() > stage) {
            part--;
        }
        return part;
    }

    /** An order in which all parts of an item follow each other. */
    public int[] row(int[] items) {
        return Arrays.stream(items)
                .flatMap(i -> IntStream.generate(() -> i).limit(parts[i].length))
                .toArray();
    }
}
