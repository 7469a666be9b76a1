package rainward.queue.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import rainward.queue.search.Decoding;
import rainward.queue.search.Genome;

/** The best of all orders, by trying every one; for a handful of items. */
public final class ExactBest {

    private ExactBest() {}

    /** Best value over all orders, each task given to whoever finishes it first. */
    static double overOrders(Shop shop) {
        Decoder decoder = new Decoder(shop);
        double[] best = {Double.NEGATIVE_INFINITY};
        permute(IntStream.range(0, shop.items().size()).toArray(), 0, order -> {
            Genome genome = new Genome(order, new int[decoder.genes()]);
            best[0] = Math.max(best[0], decoder.tryOut(genome, Decoding.Change.EVERYWHERE));
        });
        return best[0];
    }

    /** Best value over all orders and all ways to give the tasks to hands. */
    public static double overOrdersAndHands(Shop shop) {
        double[] best = {Double.NEGATIVE_INFINITY};
        assign(shop, 0, new ArrayList<>(), s -> best[0] = Math.max(best[0], overOrders(s)));
        return best[0];
    }

    private static void assign(Shop shop, int i, List<Item> fixed, Consumer<Shop> use) {
        if (i == shop.items().size()) {
            use.accept(new Shop(
                    shop.now(), shop.ways(), shop.crew(), fixed, shop.prices(), shop.stock()));
            return;
        }
        Item item = shop.items().get(i);
        for (List<Task> tasks : ways(item.chains().get(0).tasks())) {
            Chain chain = new Chain(0, Task.NO_LIMIT, tasks);
            fixed.add(new Item(false, List.of(), List.of(chain), item.starts()));
            assign(shop, i + 1, fixed, use);
            fixed.remove(i);
        }
    }

    private static List<List<Task>> ways(List<Task> tasks) {
        List<List<Task>> all = new ArrayList<>(List.of(List.of()));
        for (Task task : tasks) {
            List<List<Task>> longer = new ArrayList<>();
            for (List<Task> begun : all) {
                for (Task.Hand hand : task.hands()) {
                    List<Task> more = new ArrayList<>(begun);
                    more.add(new Task(
                            task.stage(),
                            task.site(),
                            task.waits(),
                            List.of(hand),
                            task.seeds(),
                            task.habit()));
                    longer.add(more);
                }
            }
            all = longer;
        }
        return all;
    }

    private static void permute(int[] order, int k, Consumer<int[]> use) {
        if (k == order.length) {
            use.accept(order);
            return;
        }
        for (int i = k; i < order.length; i++) {
            swap(order, k, i);
            permute(order, k + 1, use);
            swap(order, k, i);
        }
    }

    private static void swap(int[] order, int a, int b) {
        int kept = order[a];
        order[a] = order[b];
        order[b] = kept;
    }
}
