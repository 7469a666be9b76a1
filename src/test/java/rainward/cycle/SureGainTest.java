package rainward.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Waiting for a later hour counts only for what stands out of the scatter of the courses. */
class SureGainTest {

    private static double[] flat(double worth) {
        double[] hours = new double[168];
        Arrays.fill(hours, worth);
        return hours;
    }

    @Test
    void theFirstHourCountsInFullAndLaterOnesForLess() {
        double[] sure = SureGain.of(flat(0.8), 40);

        assertThat(sure[0]).isEqualTo(0.8);
        assertThat(sure[72]).isLessThan(sure[24]).isLessThan(0.8);
    }

    /** Standard error of a share, sqrt(p (1 - p) / n), p by (successes + 1) / (n + 2): textbook. */
    @Test
    void whatIsTakenGrowsWithTheDaysBetween() {
        double likely = (0.8 * 100 + 1) / 102;
        double scatter = Math.sqrt(likely * (1 - likely) / 100);
        double[] sure = SureGain.of(flat(0.8), 100);

        assertThat(sure[48]).isCloseTo(0.8 - 2.9 * scatter * 0.14 * 2, within(1e-12));
        assertThat(sure[96]).isCloseTo(0.8 - 2.9 * scatter * 0.14 * 4, within(1e-12));
    }

    @Test
    void whatAllCoursesSayIsNotCertain() {
        assertThat(SureGain.of(flat(1), 40)[72]).isLessThan(0.99);
    }

    @Test
    void aGainThatStandsOutIsKept() {
        double[] worth = flat(0.5);
        worth[96] = 0.9;

        assertThat(SureGain.of(worth, 40)[96]).isGreaterThan(0.8);
    }

    @Test
    void oneCourseIsTheTruth() {
        assertThat(SureGain.of(flat(0.4), 1)).containsExactly(flat(0.4));
    }

    @Test
    void anHourWithALittleWorthStaysOpen() {
        assertThat(Arrays.stream(SureGain.of(flat(0.01), 10))).allMatch(w -> w >= 0.005);
    }

    /**
     * Where all days are equally good in truth, the best estimate of the week sends one waiting.
     */
    @Test
    void scatterAloneSeldomMakesAnybodyWait() {
        SplittableRandom random = new SplittableRandom(7);
        int waitedForTold = 0;
        int waitedForSure = 0;
        for (int season = 0; season < 1000; season++) {
            double[] told = toldBy(40, random);
            waitedForTold += best(told) >= 24 ? 1 : 0;
            waitedForSure += best(SureGain.of(told, 40)) >= 24 ? 1 : 0;
        }

        assertThat(waitedForTold).isGreaterThan(300);
        assertThat(waitedForSure).isLessThan(60);
    }

    /** Eight in ten succeed every day; a course that fails one day mostly fails the next. */
    private static double[] toldBy(int courses, SplittableRandom random) {
        double[] worth = new double[168];
        for (int c = 0; c < courses; c++) {
            boolean stands = random.nextDouble() < 0.8;
            for (int h = 0; h < worth.length; h++) {
                if (h % 24 == 0 && random.nextDouble() < 0.02) {
                    stands = random.nextDouble() < 0.8;
                }
                worth[h] += stands ? 1.0 / courses : 0;
            }
        }
        return worth;
    }

    private static int best(double[] worth) {
        int best = 0;
        for (int h = 1; h < worth.length; h++) {
            best = worth[h] > worth[best] + 1e-12 ? h : best;
        }
        return best;
    }
}
