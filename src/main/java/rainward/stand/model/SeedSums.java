package rainward.stand.model;

import java.util.Arrays;
import rainward.stand.seedling.SeedlingFates;

/** Fates of all classes of one kind of seed on one trace, added up by seeding step. */
final class SeedSums {

    /** Those of {@link SeedlingFates}, then what waits; eight entries lie well in memory. */
    private static final int STRIDE = 8;

    private final double[] sums;

    SeedSums(int seedingSteps) {
        sums = new double[seedingSteps * STRIDE];
    }

    void clear(int seedingSteps) {
        Arrays.fill(sums, 0, seedingSteps * STRIDE, 0);
    }

    /** A class that germinates in a step. */
    void add(int j, SeedlingFates fates, int germinatedAt) {
        int to = j * STRIDE;
        int at = germinatedAt * SeedlingFates.STRIDE;
        double[] of = fates.fates;
        sums[to] += of[at];
        sums[to + 1] += of[at + 1];
        sums[to + 2] += of[at + 2];
        sums[to + 3] += of[at + 3];
        sums[to + 4] += of[at + 4];
        sums[to + 5] += of[at + 5];
    }

    /** A class that has not germinated when the traces end. */
    void open(int j, boolean moist) {
        sums[j * STRIDE + (moist ? 5 : 6)]++;
    }

    double plants(int j) {
        return sums[j * STRIDE];
    }

    double plantWorth(int j) {
        return sums[j * STRIDE + 1];
    }

    double plantStep(int j) {
        return sums[j * STRIDE + 2];
    }

    double scorched(int j) {
        return sums[j * STRIDE + 3];
    }

    double dead(int j) {
        return sums[j * STRIDE + 4];
    }

    double underWay(int j) {
        return sums[j * STRIDE + 5];
    }

    double waiting(int j) {
        return sums[j * STRIDE + 6];
    }
}
