package rainward.queue.bound;

import java.util.ArrayList;
import java.util.List;
import rainward.queue.shop.Chain;
import rainward.queue.shop.Item;
import rainward.queue.shop.Task;

/**
 * A stage of a field as the bound sees it.
 *
 * @param index among all stages
 * @param task what is done
 * @param earliest minute at which it may start, after the least time of all before it
 * @param first true where no stage is open before it
 */
record BoundedStage(int index, Task task, int earliest, boolean first) {

    /** True where its seed goes in: nothing after it counts. */
    boolean last() {
        return task.seeds().isPresent();
    }

    /** Open stages of all items up to seeding; what rain may do instead is left out. */
    static List<BoundedStage> of(List<Item> items) {
        List<BoundedStage> all = new ArrayList<>();
        for (Item item : items) {
            Chain chain = item.chains().get(0);
            if (chain.tasks().stream().anyMatch(t -> t.seeds().isPresent())) {
                add(chain, all);
            }
        }
        return all;
    }

    private static void add(Chain chain, List<BoundedStage> all) {
        int earliest = Math.max(0, chain.ready());
        boolean first = true;
        for (Task task : chain.tasks()) {
            earliest += first ? 0 : task.waits().least();
            if (task.waits().sparedBy().isEmpty()) {
                all.add(new BoundedStage(all.size(), task, earliest, first));
                earliest += BoundedWork.fastest(task);
                first = false;
            }
            if (task.seeds().isPresent()) {
                return;
            }
        }
    }
}
