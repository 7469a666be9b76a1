package rainward.queue.search;

import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Small changes of a genome that can be taken back: an item put elsewhere, two items swapped, a run
 * of items or all kin beside an item put elsewhere, another choice for a gene. Pinned items stay
 * ahead of the others.
 */
final class Moves {

    private static final double CHOICE_SHARE = 0.2;

    /** Most items do best with their first choice: it is tried this often; by experiment. */
    private static final double FIRST_CHOICE_SHARE = 0.5;

    private static final double SWAP_SHARE = 0.25;
    private static final double RUN_SHARE = 0.15;

    /** The kin that stand side by side go elsewhere together; by experiment. */
    private static final double VISIT_SHARE = 0.3;

    private static final double NEAR_SHARE = 0.3;
    private static final double KIN_SHARE = 0.3;
    private static final int LONGEST_RUN = 4;
    private static final int NEAR = 5;

    private final Decoding decoding;
    private final SplittableRandom random;
    private final Genome current;
    private final Genome next;
    private final int[] free;
    private final boolean kin;
    private int from;
    private int to;
    private int gene;

    Moves(Decoding decoding, Genome start, SplittableRandom random) {
        this.decoding = decoding;
        this.random = random;
        current = start.copy();
        next = start.copy();
        free = freeGenes(decoding);
        kin = IntStream.range(0, decoding.items())
                        .map(decoding::kinship)
                        .distinct()
                        .count()
                < decoding.items();
    }

    private static int[] freeGenes(Decoding decoding) {
        return IntStream.range(0, decoding.genes())
                .filter(g -> decoding.choices(g) > 1)
                .toArray();
    }

    Genome current() {
        return current;
    }

    /** The genome after the last change. */
    Genome next() {
        return next;
    }

    /** Makes a change and says where. */
    Decoding.Change change() {
        gene = -1;
        from = 0;
        to = -1;
        int movable = Math.max(decoding.pinned(), decoding.places() - decoding.pinned());
        if (movable < 2 || (free.length > 0 && random.nextDouble() < CHOICE_SHARE)) {
            return rechoose();
        }
        reorder();
        return new Decoding.Change(from, to);
    }

    private Decoding.Change rechoose() {
        if (free.length == 0) {
            return Decoding.Change.EVERYWHERE;
        }
        gene = free[random.nextInt(free.length)];
        next.choices()[gene] = otherChoice(current.choices()[gene], decoding.choices(gene));
        if (gene >= decoding.items()) {
            return Decoding.Change.EVERYWHERE;
        }
        return new Decoding.Change(firstPlace(gene), lastPlace(gene));
    }

    private int otherChoice(int now, int choices) {
        if (now != 0 && random.nextDouble() < FIRST_CHOICE_SHARE) {
            return 0;
        }
        int other = random.nextInt(choices - 1);
        return other < now ? other : other + 1;
    }

    private int firstPlace(int item) {
        int k = 0;
        while (current.order()[k] != item) {
            k++;
        }
        return k;
    }

    private int lastPlace(int item) {
        int k = current.order().length - 1;
        while (current.order()[k] != item) {
            k--;
        }
        return k;
    }

    private void reorder() {
        int pinned = decoding.pinned();
        int rest = decoding.places() - pinned;
        boolean ahead = pinned > 1 && (rest < 2 || random.nextInt(decoding.places()) < pinned);
        int low = ahead ? 0 : pinned;
        int high = ahead ? pinned : decoding.places();
        int a = low + random.nextInt(high - low);
        boolean besideKin = kin && random.nextDouble() < KIN_SHARE;
        int b = besideKin ? besideKin(a, low, high) : other(a, low, high);
        double kind = random.nextDouble();
        if (kind < SWAP_SHARE) {
            swap(Math.min(a, b), Math.max(a, b));
        } else if (kin && kind < SWAP_SHARE + VISIT_SHARE) {
            visit(a, b, low, high);
        } else {
            boolean run = kind < SWAP_SHARE + VISIT_SHARE + RUN_SHARE;
            int length = run ? 2 + random.nextInt(LONGEST_RUN - 1) : 1;
            shift(a, b, Math.min(length, Math.abs(a - b)));
        }
    }

    /** Puts a whole visit elsewhere: all that stand side by side with an item and are its kin. */
    private void visit(int a, int b, int low, int high) {
        int kinship = decoding.kinship(current.order()[a]);
        int first = a;
        while (first > low && decoding.kinship(current.order()[first - 1]) == kinship) {
            first--;
        }
        int last = a;
        while (last < high - 1 && decoding.kinship(current.order()[last + 1]) == kinship) {
            last++;
        }
        int length = last - first + 1;
        if (b > last) {
            shift(first, b, length);
        } else if (b < first) {
            shift(last, b, length);
        } else {
            swap(Math.min(a, b), Math.max(a, b));
        }
    }

    /** A place beside another item of the same kinship, or any where there is none. */
    private int besideKin(int a, int low, int high) {
        int[] order = current.order();
        int kinship = decoding.kinship(order[a]);
        int from = random.nextInt(high - low);
        for (int k = 0; k < high - low; k++) {
            int b = low + (from + k) % (high - low);
            if (order[b] != order[a] && decoding.kinship(order[b]) == kinship) {
                return b;
            }
        }
        return other(a, low, high);
    }

    private int other(int a, int low, int high) {
        if (random.nextDouble() < NEAR_SHARE) {
            int b = a + (random.nextBoolean() ? 1 : -1) * (1 + random.nextInt(NEAR));
            if (b >= low && b < high) {
                return b;
            }
        }
        int b = low + random.nextInt(high - low - 1);
        return b < a ? b : b + 1;
    }

    private void swap(int a, int b) {
        from = a;
        to = b;
        next.order()[a] = current.order()[b];
        next.order()[b] = current.order()[a];
    }

    /**
     * Puts {@code length} items that start (or end, going back) at {@code a} at place {@code b}.
     */
    private void shift(int a, int b, int length) {
        from = Math.min(a, b);
        to = Math.max(a, b);
        int span = to - from + 1;
        int turn = a < b ? length : span - length;
        for (int k = 0; k < span; k++) {
            next.order()[from + k] = current.order()[from + (k + turn) % span];
        }
    }

    /** Makes the last change permanent. */
    void accept() {
        if (to >= from) {
            System.arraycopy(next.order(), from, current.order(), from, to - from + 1);
        }
        if (gene >= 0) {
            current.choices()[gene] = next.choices()[gene];
        }
    }

    /** Takes the last change back. */
    void reject() {
        if (to >= from) {
            System.arraycopy(current.order(), from, next.order(), from, to - from + 1);
        }
        if (gene >= 0) {
            next.choices()[gene] = current.choices()[gene];
        }
    }
}
