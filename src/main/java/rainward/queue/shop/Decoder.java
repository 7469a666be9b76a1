package rainward.queue.shop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rainward.queue.search.Decoding;
import rainward.queue.search.Genome;

/**
 * Serial schedule generation (Kolisch 1996): items in order, each with all its tasks as early as
 * its machines, people and open hours allow; an item that does not fit is skipped, and so is one
 * that costs more than it earns, unless it is to stand first.
 */
public final class Decoder implements Decoding {

    private static final int REPAIRS = 4;

    private final Shop shop;
    private final Hands hands;
    private final Assignment assignment;
    private final int[][] kept;
    private final int[][] tried;
    private final double[][] keptSums;
    private final double[][] triedSums;
    private final int[] notBefore;
    private final int[] underWay;
    private final int pinned;
    private final double pinnedLost;
    private int triedFrom;
    private int triedTo;

    /** Prepares the rows of state, one for each place in the order. */
    public Decoder(Shop shop) {
        this.shop = shop;
        int n = shop.items().size();
        underWay = new int[n];
        Arrays.fill(underWay, NOT_GOING);
        int going = shop.items().stream().mapToInt(i -> i.underWay().size()).sum();
        hands = new Hands(shop.machines(), shop.people(), going);
        assignment = new Assignment(shop, hands);
        kept = new int[n + 1][hands.length()];
        tried = new int[n + 1][hands.length()];
        keptSums = new double[n + 1][1 + shop.stock().length];
        triedSums = new double[n + 1][1 + shop.stock().length];
        notBefore = new int[longestChain()];
        pinned = (int) shop.items().stream().filter(Item::first).count();
        pinnedLost = 1 + shop.items().stream().mapToDouble(Decoder::mostEarned).sum();
    }

    /** Nothing that others can earn makes up for a pinned item that is left out. */
    private static double mostEarned(Item item) {
        return item.chains().stream()
                .flatMap(c -> c.tasks().stream())
                .flatMap(t -> t.seeds().stream())
                .mapToDouble(Yield::weight)
                .max()
                .orElse(0);
    }

    private int longestChain() {
        return shop.items().stream()
                .flatMap(i -> i.chains().stream())
                .mapToInt(c -> c.tasks().size())
                .max()
                .orElse(0);
    }

    @Override
    public int items() {
        return shop.items().size();
    }

    @Override
    public int pinned() {
        return pinned;
    }

    /**
     * A gene for each item, when its seed may go in; then one for each day, whether it has
     * overtime.
     */
    @Override
    public int genes() {
        return items() + shop.crew().days();
    }

    @Override
    public int choices(int gene) {
        return gene < items() ? shop.items().get(gene).starts().length : 2;
    }

    @Override
    public double tryOut(Genome genome, Change change) {
        assignment.useOvertime(genome.choices(), items());
        triedFrom = change.first();
        triedTo = items();
        if (triedFrom == 0) {
            startUp();
        }
        for (int k = triedFrom; k < items(); k++) {
            boolean fresh = k == triedFrom && k > 0;
            step(genome, k, fresh ? kept[k] : tried[k], fresh ? keptSums[k] : triedSums[k]);
            if (k >= change.last() && asBefore(k + 1)) {
                triedTo = k + 1;
                double gain = triedSums[k + 1][0] - keptSums[k + 1][0];
                return keptSums[items()][0] + gain;
            }
        }
        return triedSums[items()][0];
    }

    /** True where all that follows goes as it went for the genome kept last. */
    private boolean asBefore(int k) {
        if (!Arrays.equals(tried[k], kept[k])) {
            return false;
        }
        for (int s = 1; s < keptSums[k].length; s++) {
            if (triedSums[k][s] != keptSums[k][s]) {
                return false;
            }
        }
        return true;
    }

    private void startUp() {
        System.arraycopy(hands.atStart(shop), 0, tried[0], 0, hands.length());
        triedSums[0][0] = 0;
        System.arraycopy(shop.stock(), 0, triedSums[0], 1, shop.stock().length);
        assignment.on(tried[0], triedSums[0]);
        int going = 0;
        for (int i = 0; i < items(); i++) {
            for (Task task : shop.items().get(i).underWay()) {
                boolean ends = assignment.assign(i, task, shop.now());
                hands.note(tried[0], going, ends ? assignment.finish() : NOT_GOING);
                underWay[i] = going++;
            }
        }
    }

    private void step(Genome genome, int k, int[] before, double[] sums) {
        int item = genome.order()[k];
        int wait = shop.items().get(item).starts()[genome.choices()[item]];
        for (Chain chain : shop.items().get(item).chains()) {
            if (runs(item, chain, wait, new Rows(before, sums, tried[k + 1], triedSums[k + 1]))) {
                return;
            }
        }
        assignment.forget(item);
        copy(before, sums, k + 1);
        if (shop.items().get(item).first()) {
            triedSums[k + 1][0] -= pinnedLost;
        }
    }

    /** State before and after an item. */
    private record Rows(int[] before, double[] sums, int[] after, double[] laterSums) {}

    private void copy(int[] before, double[] sums, int k) {
        System.arraycopy(before, 0, tried[k], 0, before.length);
        System.arraycopy(sums, 0, triedSums[k], 0, sums.length);
    }

    private boolean runs(int item, Chain chain, int wait, Rows rows) {
        Arrays.fill(notBefore, 0);
        for (int attempt = 0; attempt < REPAIRS; attempt++) {
            System.arraycopy(rows.before, 0, rows.after, 0, rows.before.length);
            System.arraycopy(rows.sums, 0, rows.laterSums, 0, rows.sums.length);
            assignment.on(rows.after, rows.laterSums);
            int late = firstLate(item, chain, wait);
            if (late == NONE_LATE) {
                return true;
            }
            if (late == DOES_NOT_FIT) {
                return false;
            }
        }
        return false;
    }

    private static final int NOT_GOING = -1;
    private static final int NONE_LATE = -1;
    private static final int DOES_NOT_FIT = -2;

    /**
     * Places the tasks of a chain; where one starts later than its greatest wait allows, the task
     * before it is told to start later and the index is returned.
     */
    private int firstLate(int item, Chain chain, int wait) {
        assignment.forget(item);
        double before = assignment.sum();
        int doneAt = underWay[item] < 0 ? NOT_GOING : assignment.noted(underWay[item]);
        boolean goesOn = doneAt != NOT_GOING;
        int finish = goesOn ? doneAt : chain.ready();
        boolean earns = false;
        for (int t = 0; t < chain.tasks().size(); t++) {
            Task task = chain.tasks().get(t);
            boolean follows = t > 0 || goesOn;
            if (follows && task.waits().sparedBy().get(finish / 60)) {
                continue;
            }
            int ready = Math.max(notBefore[t], finish + (follows ? task.waits().least() : 0));
            earns |= task.seeds().isPresent();
            if (!assignment.assign(item, task, earns ? Math.max(ready, wait) : ready)) {
                return DOES_NOT_FIT;
            }
            if (t == 0 && assignment.start() > chain.latest()) {
                return DOES_NOT_FIT;
            }
            int waited = assignment.start() - finish;
            if (t > 0 && waited > task.waits().greatest()) {
                notBefore[t - 1] =
                        assignment.startBefore() + waited - task.waits().greatest();
                return t;
            }
            finish = assignment.finish();
        }
        boolean pays = assignment.sum() > before || shop.items().get(item).first();
        return earns && !pays ? DOES_NOT_FIT : NONE_LATE;
    }

    @Override
    public void keep() {
        double gain = triedSums[triedTo][0] - keptSums[triedTo][0];
        for (int k = triedTo + 1; k <= items(); k++) {
            keptSums[k][0] += gain;
        }
        for (int k = triedFrom == 0 ? 0 : triedFrom + 1; k <= triedTo; k++) {
            int[] row = kept[k];
            kept[k] = tried[k];
            tried[k] = row;
            double[] sums = keptSums[k];
            keptSums[k] = triedSums[k];
            triedSums[k] = sums;
        }
    }

    /** Every task of a genome that found a place, item by item, each in order of its chain. */
    public List<Placement> placements(Genome genome) {
        assignment.record(true);
        tryOut(genome, Change.EVERYWHERE);
        List<Placement> all = new ArrayList<>(assignment.recorded());
        assignment.record(false);
        return all;
    }

    /** Days on which a genome uses overtime. */
    public boolean[] overtime(Genome genome) {
        assignment.useOvertime(genome.choices(), items());
        return assignment.overtime();
    }
}
