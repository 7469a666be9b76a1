package rainward.weather.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.GeoPoint;
import rainward.weather.trace.TraceSettings.Dependence;

/** The field behind the rain: joint chances of a bivariate normal, computed outside the program. */
class LatentFieldTest {

    static final int TRACES = 10_000;
    static final GeoPoint OTHER = new GeoPoint(42.2, -84.6);

    static LatentField field(Dependence dependence, GeoPoint... points) {
        return new LatentField(
                new TraceSettings(TRACES, 99, Skies.hours(0, 240), dependence), List.of(points));
    }

    static double[][] at(LatentField field, Instant instant, int points) {
        field.moveTo(instant, field.randomAt(instant));
        return IntStream.range(0, points)
                .mapToObj(p -> field.at(p).clone())
                .toArray(double[][]::new);
    }

    /** Distance at which a correlation is left of {@link #OTHER} [km]. */
    static Dependence leaving(double correlation) {
        double km = Skies.FARM.distanceKm(OTHER);
        return new Dependence(-km / Math.log(correlation), 21);
    }

    @Nested
    class TwoFields {

        @ParameterizedTest(name = "{0} and {1} at correlation {2}: {3} together")
        @CsvSource({
            "0.4, 0.4, 0.5, 0.2391",
            "0.4, 0.4, 0.8, 0.3009",
            "0.4, 0.4, 0.95, 0.3511",
            "0.3, 0.6, 0.8, 0.2863"
        })
        void areWetTogetherAsOftenAsTheCopulaSays(
                double chanceHere, double chanceThere, double correlation, double both) {
            LatentField field = field(leaving(correlation), Skies.FARM, OTHER);
            double together = 0;
            int periods = 40;
            for (int i = 0; i < periods; i++) {
                double[][] z = at(field, Skies.START.plus(Duration.ofDays(30L * i)), 2);
                together += together(z, quantile(1 - chanceHere), quantile(1 - chanceThere));
            }
            // 400,000 draws: three standard errors are 0.0023.
            assertThat(together / periods / TRACES).isCloseTo(both, within(0.0025));
        }

        private double together(double[][] z, double here, double there) {
            int count = 0;
            for (int n = 0; n < TRACES; n++) {
                count += z[0][n] > here && z[1][n] > there ? 1 : 0;
            }
            return count;
        }

        private double quantile(double probability) {
            return org.apache.commons.statistics.distribution.NormalDistribution.of(0, 1)
                    .inverseCumulativeProbability(probability);
        }
    }

    @Test
    void theFieldKeepsItsVarianceThroughTime() {
        LatentField field = field(Dependence.USUAL, Skies.FARM, OTHER);
        double square = 0;
        for (int i = 0; i < 60; i++) {
            double[] z = at(field, Skies.START.plus(Duration.ofHours(6L * i)), 2)[1];
            square += java.util.Arrays.stream(z).map(v -> v * v).average().orElseThrow();
        }
        assertThat(square / 60).isCloseTo(1, within(0.03));
    }

    @ParameterizedTest(name = "{0} h apart")
    @CsvSource({"1", "6", "24"})
    void persistenceFallsToOneInEOverItsTime(int hours) {
        LatentField field = field(Dependence.USUAL, Skies.FARM);
        double[] first = at(field, Skies.START, 1)[0];
        double[] second = at(field, Skies.START.plus(Duration.ofHours(hours)), 1)[0];
        double sum = 0;
        for (int n = 0; n < TRACES; n++) {
            sum += first[n] * second[n];
        }
        assertThat(sum / TRACES).isCloseTo(Math.exp(-hours / 21.0), within(0.03));
    }

    /**
     * The usual persistence gives back the chain it is taken from: 31.25 % wet days, both of two
     * neighbours wet in 0.3125 x 0.45 (first-order Markov chain p01 0.25, p11 0.45).
     */
    @Test
    void oneDayApartWetDaysFollowTheMarkovChain() {
        LatentField field = field(Dependence.USUAL, Skies.FARM);
        double threshold = 0.48878; // standard normal quantile of 0.6875
        int both = 0;
        int rounds = 30;
        for (int i = 0; i < rounds; i++) {
            Instant day = Skies.START.plus(Duration.ofDays(40L * i));
            double[] first = at(field, day, 1)[0];
            double[] second = at(field, day.plus(Duration.ofDays(1)), 1)[0];
            for (int n = 0; n < TRACES; n++) {
                both += first[n] > threshold && second[n] > threshold ? 1 : 0;
            }
        }
        assertThat(both / (double) rounds / TRACES).isCloseTo(0.3125 * 0.45, within(0.003));
    }
}
