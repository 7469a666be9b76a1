package rainward.queue.shop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import rainward.farm.Require;
import rainward.queue.search.Decoding;
import rainward.queue.search.Genome;

/**
 * Serial schedule generation (Kolisch 1996): items in order, each with its tasks as early as its
 * machines, people and open hours allow; an item that does not fit is skipped, and so is one that
 * costs more than it and its neighbours can earn, unless it is to stand first.
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
    private final ItemParts parts;
    private final int[] progressNote;
    private final boolean[] excluded;
    private final int[] site;
    private final int places;
    private final int pinned;
    private int triedFrom;
    private int triedTo;
    private int endOfPart;
    private final Margins margins;

    /** Prepares the rows of state, one for each place in the order. */
    public Decoder(Shop shop) {
        this.shop = shop;
        int n = shop.items().size();
        underWay = new int[n];
        Arrays.fill(underWay, Asked.NOT_GOING);
        parts = new ItemParts(shop.items());
        Require.that(
                IntStream.range(0, n).allMatch(i -> parts.of(i) < PARTS_MASK), "too many parts");
        progressNote = new int[n];
        excluded = new boolean[n];
        site = shop.items().stream().mapToInt(Item::site).toArray();
        int notes = shop.items().stream().mapToInt(i -> i.underWay().size()).sum();
        for (int i = 0; i < n; i++) {
            progressNote[i] = parts.of(i) > 1 ? notes++ : WHOLE;
        }
        hands = new Hands(shop, notes);
        assignment = new Assignment(shop, hands);
        places = IntStream.range(0, n).map(parts::of).sum();
        kept = new int[places + 1][hands.length()];
        tried = new int[places + 1][hands.length()];
        keptSums = new double[places + 1][1 + shop.stock().length];
        triedSums = new double[places + 1][1 + shop.stock().length];
        notBefore = new int[shop.longestChain()];
        pinned = IntStream.range(0, n)
                .filter(i -> shop.items().get(i).first())
                .map(parts::of)
                .sum();
        margins = new Margins(shop.items(), site);
    }

    @Override
    public int items() {
        return shop.items().size();
    }

    @Override
    public int places() {
        return places;
    }

    /** Into how many parts long waits cut each item, and which stage is in which. */
    public ItemParts parts() {
        return parts;
    }

    /** Minutes before which an item's seed may be told to wait, one for each choice. */
    public int[] waits(int item) {
        return shop.items().get(item).starts().clone();
    }

    @Override
    public int kinship(int item) {
        return site[item];
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
        return gene < items() ? waits(gene).length : 2;
    }

    @Override
    public double tryOut(Genome genome, Change change) {
        assignment.useOvertime(genome.choices(), items());
        triedFrom = change.first();
        triedTo = places;
        if (triedFrom == 0) {
            startUp();
        }
        for (int k = triedFrom; k < places; k++) {
            boolean fresh = k == triedFrom && k > 0;
            step(genome, k, fresh ? kept[k] : tried[k], fresh ? keptSums[k] : triedSums[k]);
            if (k >= change.last() && asBefore(k + 1)) {
                triedTo = k + 1;
                double gain = triedSums[k + 1][0] - keptSums[k + 1][0];
                return keptSums[places][0] + gain;
            }
        }
        return triedSums[places][0];
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
                boolean ends = assignment.goOn(i, task);
                hands.note(tried[0], going, ends ? assignment.finish() : Asked.NOT_GOING);
                underWay[i] = going++;
            }
            if (progressNote[i] != WHOLE) {
                hands.note(tried[0], progressNote[i], excluded[i] ? FAILED : 0);
            }
        }
    }

    private void step(Genome genome, int k, int[] before, double[] sums) {
        int item = genome.order()[k];
        Rows rows = new Rows(before, sums, tried[k + 1], triedSums[k + 1]);
        int wait = shop.items().get(item).starts()[genome.choices()[item]];
        if (progressNote[item] == WHOLE ? !whole(item, wait, rows) : !part(item, wait, rows)) {
            assignment.forget(item);
            copy(before, sums, k + 1);
            fail(item, k + 1);
        }
    }

    private boolean whole(int item, int wait, Rows rows) {
        int after = underWay[item] < 0 ? Asked.NOT_GOING : hands.noted(rows.before, underWay[item]);
        if (excluded[item]) {
            return false;
        }
        for (Chain chain : shop.items().get(item).chains()) {
            if (runs(item, new Asked(chain, wait, after, true, false), rows)) {
                return true;
            }
        }
        return shop.items().get(item).keepsSeed()
                && shop.items().get(item).chains().stream()
                        .anyMatch(c -> runs(item, new Asked(c, wait, after, true, true), rows));
    }

    private boolean part(int item, int wait, Rows rows) {
        int progress = hands.noted(rows.before, progressNote[item]);
        if (progress == FAILED) {
            return false;
        }
        int done = progress & PARTS_MASK;
        int after = done == 0 ? Asked.NOT_GOING : progress >> PARTS_BITS;
        Chain chain = parts.of(item, done);
        if (!runs(item, new Asked(chain, wait, after, false, false), rows)
                && !(shop.items().get(item).keepsSeed()
                        && runs(item, new Asked(chain, wait, after, false, true), rows))) {
            return false;
        }
        hands.note(rows.after, progressNote[item], endOfPart << PARTS_BITS | (done + 1));
        return true;
    }

    private void fail(int item, int k) {
        boolean already =
                progressNote[item] != WHOLE && hands.noted(tried[k], progressNote[item]) == FAILED;
        if (progressNote[item] != WHOLE) {
            hands.note(tried[k], progressNote[item], FAILED);
        }
        if (shop.items().get(item).first() && !already) {
            triedSums[k][0] -= margins.pinnedLostHa();
        }
    }

    /** When the work before ends [min], and the value before all of it [ha]. */
    private record Ended(int finish, double valueHa) {}

    /** State before and after an item. */
    private record Rows(int[] before, double[] sums, int[] after, double[] laterSums) {}

    private void copy(int[] before, double[] sums, int k) {
        System.arraycopy(before, 0, tried[k], 0, before.length);
        System.arraycopy(sums, 0, triedSums[k], 0, sums.length);
    }

    private boolean runs(int item, Asked asked, Rows rows) {
        Arrays.fill(notBefore, 0);
        for (int attempt = 0; attempt < REPAIRS; attempt++) {
            System.arraycopy(rows.before, 0, rows.after, 0, rows.before.length);
            System.arraycopy(rows.sums, 0, rows.laterSums, 0, rows.sums.length);
            assignment.on(rows.after, rows.laterSums);
            int late = firstLate(item, asked);
            if (late == NONE_LATE) {
                return true;
            }
            if (late == DOES_NOT_FIT) {
                return false;
            }
        }
        return false;
    }

    private static final int WHOLE = -1;
    private static final int FAILED = -1;
    private static final int PARTS_BITS = 8;
    private static final int PARTS_MASK = (1 << PARTS_BITS) - 1;
    private static final int NONE_LATE = -1;
    private static final int DOES_NOT_FIT = -2;

    /**
     * Places the tasks of a chain; where one starts later than its greatest wait allows, the task
     * before it is told to start later and the index is returned.
     */
    private int firstLate(int item, Asked asked) {
        Chain chain = asked.chain();
        assignment.forget(item, chain);
        double before = assignment.sum();
        boolean goesOn = asked.goesOn();
        int finish = goesOn ? asked.after() : chain.ready();
        boolean earns = false;
        for (int t = 0; t < chain.tasks().size(); t++) {
            Task task = chain.tasks().get(t);
            boolean follows = t > 0 || goesOn;
            if (follows && task.waits().sparedBy().get(finish / 60)) {
                continue;
            }
            int ready = Math.max(notBefore[t], finish + (follows ? task.waits().least() : 0));
            if (asked.keeps() && task.seeds().isPresent()) {
                return kept(item, asked, t, new Ended(finish, before));
            }
            earns |= task.seeds().isPresent();
            if (!assignment.assign(
                    item, task, earns ? Math.max(ready, asked.waitUntil()) : ready)) {
                return DOES_NOT_FIT;
            }
            if (t == 0 && asked.startsTooLate(task, assignment.start(), finish)) {
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
        endOfPart = finish;
        return earns && !pays(item, before) ? DOES_NOT_FIT : NONE_LATE;
    }

    /** As {@link #firstLate}, where the seed goes in at the end of the days planned, or later. */
    private int kept(int item, Asked asked, int seeding, Ended ended) {
        Item.Keeping keeping = shop.items().get(item).keeping();
        Task.Waits waits = asked.chain().tasks().get(seeding).waits();
        boolean follows = seeding > 0 || asked.goesOn();
        int waited = keeping.until() - ended.finish;
        boolean stale = follows && waited > waits.greatest();
        if (stale && seeding > 0) {
            notBefore[seeding - 1] = assignment.start() + waited - waits.greatest();
            return seeding;
        }
        if (stale || (!follows && keeping.until() > asked.chain().latest())) {
            return DOES_NOT_FIT;
        }
        assignment.earn(keeping.readyHa());
        endOfPart = ended.finish;
        return pays(item, ended.valueHa) ? NONE_LATE : DOES_NOT_FIT;
    }

    private boolean pays(int item, double beforeHa) {
        return margins.allow(item, assignment.sum() - beforeHa);
    }

    @Override
    public void keep() {
        double gain = triedSums[triedTo][0] - keptSums[triedTo][0];
        for (int k = triedTo + 1; k <= places; k++) {
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

    /**
     * Every task of a genome that found a place, item by item, each in order of its chain. Items
     * that were begun but cannot be finished are left out, to the good of the others, and so are
     * those without which the rest is worth more.
     */
    public List<Placement> placements(Genome genome) {
        exclude(Losing.among(trial(genome), site, i -> !shop.items().get(i).first()));
        assignment.record(true);
        tryOut(genome, Change.EVERYWHERE);
        List<Placement> all = new ArrayList<>(assignment.recorded());
        assignment.record(false);
        Arrays.fill(excluded, false);
        return all;
    }

    private Losing.Trial trial(Genome genome) {
        return new Losing.Trial() {
            @Override
            public double without(BitSet out) {
                exclude(out);
                return tryOut(genome, Change.EVERYWHERE);
            }

            @Override
            public int begunInVain() {
                return lastUnfinished(genome);
            }

            @Override
            public double gain(int item) {
                return IntStream.range(0, places)
                        .filter(k -> genome.order()[k] == item)
                        .mapToDouble(k -> triedSums[k + 1][0] - triedSums[k][0])
                        .sum();
            }
        };
    }

    private void exclude(BitSet out) {
        for (int i = 0; i < excluded.length; i++) {
            excluded[i] = out.get(i);
        }
    }

    /** The item that was begun last of those that are not finished; below zero: none. */
    private int lastUnfinished(Genome genome) {
        for (int k = places - 1; k >= 0; k--) {
            int item = genome.order()[k];
            boolean failed = progressNote[item] != WHOLE
                    && hands.noted(tried[places], progressNote[item]) == FAILED;
            if (failed && !excluded[item]) {
                return item;
            }
        }
        return -1;
    }

    /** Days on which a genome uses overtime. */
    public boolean[] overtime(Genome genome) {
        assignment.useOvertime(genome.choices(), items());
        return assignment.overtime();
    }
}
