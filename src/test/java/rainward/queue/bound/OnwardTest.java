package rainward.queue.bound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class OnwardTest {

    private static final int STAGES = 4;
    private static final int LAST = 1;

    @Test
    void theTwoBestThatBeginDifferentlyAreKeptWhateverTheOrderOfOffers() {
        SplittableRandom random = new SplittableRandom(3);
        for (int run = 0; run < 500; run++) {
            Onward onward = new Onward(LAST);
            double[] best = new double[STAGES];
            onward.pass(0, -1);
            for (int k = 0; k < 10; k++) {
                int stage = random.nextInt(STAGES);
                double worth = random.nextDouble(-1, 2);
                best[stage] = Math.max(best[stage], worth);
                onward.offer(0, worth, stage, k, 0);
            }
            for (int stage = 0; stage < STAGES; stage++) {
                int rank = onward.rankWithout(stage, 0);
                assertThat(onward.stage(rank, 0)).isNotEqualTo(stage);
                assertThat(onward.value(rank, 0)).isEqualTo(bestWithout(best, stage));
            }
        }
    }

    /** Doing nothing is worth zero and begins with no stage. */
    private static double bestWithout(double[] best, int stage) {
        double[] others = best.clone();
        others[stage] = 0;
        return Arrays.stream(others).max().orElseThrow();
    }

    @Test
    void aWayGoesOnWithTheWaysOfTheNextMinuteUntilABetterOneIsOffered() {
        Onward onward = new Onward(2);
        onward.pass(1, -1);
        onward.offer(1, 5, 3, 7, 0);
        onward.pass(0, -1);
        assertThat(onward.value(0, 0)).isEqualTo(5);
        assertThat(onward.stage(0, 0)).isEqualTo(3);
        assertThat(onward.choice(0, 0)).isEqualTo(-1);
        assertThat(onward.rankAfter(0, 0)).isZero();
        assertThat(onward.rankAfter(1, 0)).isEqualTo(1);
    }
}
