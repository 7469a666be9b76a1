package rainward.queue.bound;

import java.util.Arrays;

/**
 * At one place, for each open minute, the two best ways on that begin with different stages: after
 * a stage the better of them that does not do it once more is followed, as no stage is done twice
 * (the elimination of short cycles; Christofides, Mingozzi and Toth 1981).
 */
final class Onward {

    /** Nothing is done any more. */
    private static final int NO_STAGE = -1;

    private static final int NO_WAY = -2;

    private final double[][] value;
    private final int[][] stage;
    private final int[][] choice;
    private final int[][] rankAfter;

    /** Takes the number of minutes; at the end of the last, nothing is done any more. */
    Onward(int minutes) {
        value = new double[2][minutes + 1];
        stage = new int[2][minutes + 1];
        choice = new int[2][minutes + 1];
        rankAfter = new int[2][minutes + 1];
        Arrays.fill(value[1], Double.NEGATIVE_INFINITY);
        stage[0][minutes] = NO_STAGE;
        stage[1][minutes] = NO_WAY;
    }

    /** What the better (0) or the other (1) of a minute's ways brings. */
    double value(int rank, int minute) {
        return value[rank][minute];
    }

    /** Stage that a way begins with. */
    int stage(int rank, int minute) {
        return stage[rank][minute];
    }

    /** What a way does first, as it was offered. */
    int choice(int rank, int minute) {
        return choice[rank][minute];
    }

    /** Which of the ways of the minute after its first choice a way goes on with. */
    int rankAfter(int rank, int minute) {
        return rankAfter[rank][minute];
    }

    /** Which way to follow after a stage. */
    int rankWithout(int doneStage, int minute) {
        return stage[0][minute] == doneStage ? 1 : 0;
    }

    /** Sets both ways to those of the next minute. */
    void pass(int minute, int what) {
        for (int rank = 0; rank < 2; rank++) {
            value[rank][minute] = value[rank][minute + 1];
            stage[rank][minute] = stage[rank][minute + 1];
            choice[rank][minute] = what;
            rankAfter[rank][minute] = rank;
        }
    }

    /**
     * Offers another way.
     *
     * @param minute index of an open minute
     * @param worth what it brings
     * @param first stage that it begins with
     * @param what it does first
     * @param after which way it goes on with then
     */
    void offer(int minute, double worth, int first, int what, int after) {
        if (worth <= value[1][minute]) {
            return;
        }
        boolean better = worth > value[0][minute];
        boolean same = first == stage[0][minute];
        if (same && !better) {
            return;
        }
        if (better && !same) {
            value[1][minute] = value[0][minute];
            stage[1][minute] = stage[0][minute];
            choice[1][minute] = choice[0][minute];
            rankAfter[1][minute] = rankAfter[0][minute];
        }
        int rank = better ? 0 : 1;
        value[rank][minute] = worth;
        stage[rank][minute] = first;
        choice[rank][minute] = what;
        rankAfter[rank][minute] = after;
    }
}
