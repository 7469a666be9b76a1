package rainward.weather.rain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One storm in whole hours. */
class StormBlockTest {

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void theHoursOfAStormAddUpToIt(int hours) {
        assertThat(Arrays.stream(StormBlock.of(hours)).sum()).isCloseTo(1, within(1e-12));
        assertThat(StormBlock.of(hours)).hasSize(hours);
    }

    /** A triangle of peak 2/D at 0.375 D (Yen and Chow 1980, from memory): 0.375 fell by then. */
    @Test
    void theShareFallenByThePeakIsThePeaksPlace() {
        assertThat(StormBlock.mass(0.375)).isCloseTo(0.375, within(1e-12));
        assertThat(StormBlock.mass(0)).isZero();
        assertThat(StormBlock.mass(1)).isEqualTo(1);
    }

    @Test
    void aLongStormPeaksInItsFirstHalfAndTailsOff() {
        double[] shares = StormBlock.of(6);
        assertThat(shares[2]).isGreaterThan(shares[0]).isGreaterThan(shares[5]);
        assertThat(shares[5]).isLessThan(shares[4]);
    }
}
