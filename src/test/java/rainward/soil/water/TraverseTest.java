package rainward.soil.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The branchless comparisons against those of the library, on numbers of all sizes and signs. */
class TraverseTest {

    @Test
    void positiveIsTheGreaterOfZeroAndANumberToTheBit() {
        var random = new SplittableRandom(20260730);
        for (int i = 0; i < 10_000; i++) {
            double value = any(random);
            assertThat(Traverse.positive(value)).isEqualTo(Math.max(0, value));
        }
        assertThat(Traverse.positive(0)).isZero();
    }

    @Test
    void lesserAndGreaterAreThoseOfTheLibraryToRounding() {
        var random = new SplittableRandom(20260731);
        for (int i = 0; i < 10_000; i++) {
            double one = any(random);
            double other = any(random);
            var close = within(1e-15 * (Math.abs(one) + Math.abs(other)));
            assertThat(Traverse.lesser(one, other)).isCloseTo(Math.min(one, other), close);
            assertThat(Traverse.greater(one, other)).isCloseTo(Math.max(one, other), close);
        }
    }

    /** What is held bounds what is taken: a layer never falls below air-dry by rounding. */
    @Test
    void lesserNeverPassesItsFirstNumberNorGreaterFallsBelowIt() {
        var random = new SplittableRandom(20260801);
        for (int i = 0; i < 10_000; i++) {
            double one = any(random);
            double other = any(random);
            assertThat(Traverse.lesser(one, other)).isLessThanOrEqualTo(one);
            assertThat(Traverse.greater(one, other)).isGreaterThanOrEqualTo(one);
        }
    }

    private static double any(SplittableRandom random) {
        return (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(-9, 4));
    }
}
