package rainward.replay.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class IntervalTest {

    private static double[] draw(SplittableRandom random, int count) {
        return random.doubles(count).map(d -> random.nextGaussian() * 3 + 10).toArray();
    }

    /** Student: mean and 1.96 standard errors, for many values of a normal. */
    @Test
    void rangeIsThatOfTheMeanOfANormal() {
        Interval interval = Interval.of(draw(new SplittableRandom(1), 900));

        assertThat(interval.high() - interval.low()).isCloseTo(2 * 1.96 * 3 / 30, within(0.04));
    }

    /** Percentile intervals of small samples are a little narrow; 81 seasons are enough. */
    @Test
    void nineteenOfTwentyRangesHoldTheTruth() {
        SplittableRandom random = new SplittableRandom(5);
        int held = 0;
        for (int i = 0; i < 300; i++) {
            Interval interval = Interval.of(draw(random, 81));
            held += interval.low() <= 10 && 10 <= interval.high() ? 1 : 0;
        }
        assertThat(held / 300.0).isBetween(0.91, 0.98);
    }

    @Test
    void equalValuesLeaveNoRange() {
        assertThat(Interval.of(new double[] {4, 4, 4})).isEqualTo(new Interval(4, 4, 4));
    }
}
