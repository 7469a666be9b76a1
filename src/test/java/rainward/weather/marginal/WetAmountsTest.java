package rainward.weather.marginal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Wet amounts against gamma exceedances computed outside the program. */
class WetAmountsTest {

    /**
     * Chance of precipitation 0.60 and 0.30 in expected give a wet mean of 0.50 in; gamma of shape
     * 0.75 exceeds each threshold as often as computed outside the program from the distribution.
     */
    @ParameterizedTest(name = "more than {0} in")
    @CsvSource({"0.10, 0.4523", "0.25, 0.3319", "0.50, 0.2090", "1.00, 0.0886"})
    void exceedanceIsThatOfTheGammaDistribution(double inches, double expected) {
        int wet = 6_000;
        double[] multiples = new WetAmounts().multiples(wet);
        long beyond = Arrays.stream(multiples).filter(m -> m * 0.50 > inches).count();
        assertThat(0.60 * beyond / wet).isCloseTo(expected, within(0.0005));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 120, 200, 5000})
    void amountsAverageOneHoweverFewAreWet(int wet) {
        double[] multiples = new WetAmounts().multiples(wet);
        assertThat(Arrays.stream(multiples).average().orElseThrow()).isCloseTo(1, within(1e-9));
        assertThat(multiples).hasSize(wet);
    }

    @Test
    void theWettestComesFirst() {
        double[] multiples = new WetAmounts().multiples(200);
        for (int rank = 1; rank < multiples.length; rank++) {
            assertThat(multiples[rank]).isLessThan(multiples[rank - 1]).isPositive();
        }
    }

    /** Gamma of shape k and mean 1 has variance 1/k. */
    @Test
    void theSpreadIsThatOfShapeThreeQuarters() {
        double square = Arrays.stream(new WetAmounts().multiples(20_000))
                .map(m -> m * m)
                .average()
                .orElseThrow();
        assertThat(square - 1).isCloseTo(1 / 0.75, within(0.01));
    }

    /** Exponential is gamma of shape 1; its exceedances at 0.2, 0.5, 1 and 2 times the mean. */
    @ParameterizedTest(name = "more than {0} times the mean")
    @CsvSource({"0.2, 0.8187", "0.5, 0.6065", "1, 0.3679", "2, 0.1353"})
    void anExponentialInsteadMovesTheChanceByLessThanSevenHundredths(
            double times, double exponential) {
        assertThat(beyond(new WetAmounts(1), times)).isCloseTo(exponential, within(0.001));
        assertThat(beyond(new WetAmounts(), times)).isCloseTo(exponential, within(0.07));
    }

    private static double beyond(WetAmounts amounts, double times) {
        double[] multiples = amounts.multiples(6_000);
        return Arrays.stream(multiples).filter(m -> m > times).count() / 6_000.0;
    }
}
