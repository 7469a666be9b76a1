package rainward.queue.shop;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Finds the items without which the others are worth more: a search takes them on trust, as the
 * first item at a place bears the drive of all machines and its neighbours may make up for it.
 */
final class Losing {

    /** The first round finds nearly all; each trial costs as much as a try of the search. */
    private static final int ROUNDS = 3;

    private final Trial trial;
    private final int[] site;
    private final IntPredicate mayGo;
    private BitSet out = new BitSet();
    private double value;

    private Losing(Trial trial, int[] site, IntPredicate mayGo) {
        this.trial = trial;
        this.site = site;
        this.mayGo = mayGo;
    }

    /** A row of items, valued without some of them. */
    interface Trial {

        /** Value without these items, with what others cost that are begun for nothing [ha]. */
        double without(BitSet out);

        /** The last of those that are begun and not finished; below zero: none. */
        int begunInVain();

        /** What an item brought when the row was valued last, less what it cost [ha]. */
        double gain(int item);
    }

    /**
     * Leaves out losing items, a whole place at a time and one at a time, until nothing is gained.
     *
     * @param trial values what is left
     * @param site place of each item
     * @param mayGo which items may be left out
     * @return those to be left out, with those that cannot be finished
     */
    static BitSet among(Trial trial, int[] site, IntPredicate mayGo) {
        Losing losing = new Losing(trial, site, mayGo);
        losing.settle();
        for (int round = 0; round < ROUNDS && losing.oneRound(); round++) {
            losing.settle();
        }
        return losing.out;
    }

    /** Leaves out one after the other what is begun in vain. */
    private void settle() {
        value = trial.without(out);
        for (int item = trial.begunInVain(); item >= 0; item = trial.begunInVain()) {
            out.set(item);
            value = trial.without(out);
        }
    }

    private boolean oneRound() {
        int[] losing = IntStream.range(0, site.length)
                .filter(mayGo)
                .filter(i -> trial.gain(i) < 0)
                .toArray();
        boolean better = false;
        for (int place : Arrays.stream(losing).map(i -> site[i]).distinct().toArray()) {
            better |= isBetterWithout(other -> site[other] == place);
        }
        for (int item : losing) {
            better |= isBetterWithout(other -> other == item);
        }
        return better;
    }

    private boolean isBetterWithout(IntPredicate these) {
        BitSet more = (BitSet) out.clone();
        IntStream.range(0, site.length).filter(these).filter(mayGo).forEach(more::set);
        if (more.equals(out)) {
            return false;
        }
        double without = trial.without(more);
        if (without <= value) {
            return false;
        }
        out = more;
        value = without;
        return true;
    }
}
