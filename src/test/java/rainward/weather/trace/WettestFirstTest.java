package rainward.weather.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The quick order of traces against a plain sort of the same values. */
class WettestFirstTest {

    static final int TRACES = 200;

    @ParameterizedTest(name = "{0} wanted above {1}, stretched by {2}")
    @CsvSource({
        "60, 0.2, 1",
        "60, -0.5, 1",
        "199, -3, 1",
        "1, 2.4, 1",
        "60, 3.6, 1", // above all bins
        "60, 0.2, 30", // most values above the last bin
        "200, -Infinity, 1",
        "150, 0.2, 1" // fewer than wanted lie above
    })
    void isThatOfASort(int wanted, double cut, double stretch) {
        var luck = new SplittableRandom(20260713);
        var order = new WettestFirst(TRACES);
        for (int round = 0; round < 50; round++) {
            double[] values = IntStream.range(0, TRACES)
                    .mapToDouble(n -> stretch * luck.nextGaussian())
                    .toArray();
            List<Integer> sorted = IntStream.range(0, TRACES)
                    .boxed()
                    .sorted(Comparator.comparingDouble((Integer n) -> -values[n]))
                    .limit(wanted)
                    .toList();

            order.rank(values, wanted, cut);

            assertThat(IntStream.range(0, wanted).mapToObj(order::trace).toList())
                    .isEqualTo(sorted);
        }
    }
}
