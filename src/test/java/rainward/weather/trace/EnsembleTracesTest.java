package rainward.weather.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.skill.Recalibration;
import rainward.weather.source.EnsembleRain;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.WeightedEnsemble;

/** Members of an ensemble are the traces, moved to the official forecast where there is one. */
class EnsembleTracesTest {

    static final GeoPoint OTHER = new GeoPoint(42.4, -84.5);

    static EnsembleRain ensemble(double[]... rainMm) {
        return new EnsembleRain(
                new ForecastSeries.Stamp("invented", Skies.START, Skies.START),
                Skies.FARM,
                Skies.START,
                rainMm,
                List.of());
    }

    /** A member that rains one hour's total in hour 2 of 6. */
    static double[] burst(double mm) {
        return new double[] {0, 0, mm, 0, 0, 0};
    }

    static Traces made(
            List<RainAmount> amounts,
            List<RainChance> chances,
            int traces,
            WeightedEnsemble... ensembles) {
        var forecast = new PointForecast(
                Skies.forecast(Skies.FARM, amounts, chances),
                List.of(ensembles),
                Recalibration.NONE);
        return TraceMaker.withEnsembles(
                        List.of(forecast),
                        new TraceSettings(traces, 1, Skies.hours(0, 6)),
                        Skies.EVEN_YEAR)
                .get(0)
                .traces();
    }

    static double[] totals(Traces traces) {
        return Totals.ofMm(traces, Skies.hours(0, 6));
    }

    @Nested
    class WithoutAnOfficialForecast {

        @Test
        void membersAreTakenAsTheyAre() {
            var four = ensemble(burst(0), burst(12), burst(3), burst(0.6));
            Traces traces = made(List.of(), List.of(), 4, new WeightedEnsemble(four, 1));
            assertThat(totals(traces)[0]).isCloseTo(0, within(1e-9));
            assertThat(totals(traces)[1]).isCloseTo(12, within(1e-9));
            assertThat(totals(traces)[2]).isCloseTo(3, within(1e-9));
            assertThat(totals(traces)[3]).isCloseTo(0.6, within(1e-9));
            assertThat(traces.rainMm()[2][1]).isCloseTo(12, within(1e-9));
        }

        @Test
        void anEnsembleOfThreeTimesTheWeightFillsThreeQuartersOfTheTraces() {
            var wet = new WeightedEnsemble(ensemble(burst(8), burst(8)), 3);
            var dry = new WeightedEnsemble(ensemble(burst(0), burst(0), burst(0)), 1);
            double[] totals = totals(made(List.of(), List.of(), 200, wet, dry));
            assertThat(Totals.wet(totals)).isBetween(149L, 151L);
        }
    }

    @Nested
    class RecentredOnTheOfficialForecast {

        static final List<RainAmount> FIVE_MM = List.of(Skies.amount(0, 6, 5));

        @Test
        void chanceAndAmountAreTheOfficialOnes() {
            var four = ensemble(burst(0), burst(12), burst(3), burst(0.6));
            double[] totals = totals(made(
                    FIVE_MM, List.of(Skies.chance(0, 6, 0.5)), 400, new WeightedEnsemble(four, 1)));
            assertThat(Totals.wet(totals)).isBetween(199L, 201L);
            assertThat(Totals.mean(totals)).isCloseTo(5, within(0.03));
        }

        @Test
        void theMembersSpreadIsKept() {
            var even = ensemble(burst(4), burst(4.1), burst(4.2));
            double[] totals = totals(made(
                    FIVE_MM, List.of(Skies.chance(0, 6, 1)), 300, new WeightedEnsemble(even, 1)));
            assertThat(Arrays.stream(totals).min().orElseThrow()).isGreaterThan(4.7);
            assertThat(Arrays.stream(totals).max().orElseThrow()).isLessThan(5.3);
        }

        @Test
        void whereNoMemberRainsTheOfficialRainStillFalls() {
            var dry = ensemble(burst(0), burst(0));
            double[] totals = totals(made(
                    FIVE_MM, List.of(Skies.chance(0, 6, 0.5)), 200, new WeightedEnsemble(dry, 1)));
            assertThat(Totals.wet(totals)).isBetween(99L, 101L);
            assertThat(Totals.mean(totals)).isCloseTo(5, within(0.06));
        }

        @Test
        void noChanceIsDryWhateverTheMembersSay() {
            var wet = ensemble(burst(9), burst(7));
            double[] totals = totals(made(
                    List.of(Skies.amount(0, 6, 0)),
                    List.of(Skies.chance(0, 6, 0)),
                    20,
                    new WeightedEnsemble(wet, 1)));
            assertThat(totals).containsOnly(0);
        }

        @Test
        void anEnsembleTooShortForThePeriodLeavesItToTheField() {
            var oneHour = ensemble(new double[] {9}, new double[] {0});
            double[] totals = totals(made(
                    FIVE_MM,
                    List.of(Skies.chance(0, 6, 0.5)),
                    200,
                    new WeightedEnsemble(oneHour, 1)));
            assertThat(Totals.wet(totals)).isBetween(99L, 101L);
        }
    }

    /**
     * Ranks of members become ranks of traces at every farm, as in the shuffle of Clark et al. 2004
     * (J. Hydromet. 5:243-262): pairs (10, 2), (1, 1), (6, 9), (4, 3) give ranks 4, 1, 3, 2 and 2,
     * 1, 4, 3.
     */
    @Test
    void ranksOfMembersAreKeptAtEveryFarm() {
        var here = ensemble(burst(10), burst(1), burst(6), burst(4));
        var there = ensemble(burst(2), burst(1), burst(9), burst(3));
        List<RainAmount> amounts = List.of(Skies.amount(0, 6, 20));
        List<RainChance> chances = List.of(Skies.chance(0, 6, 1));
        List<PointTraces> made = TraceMaker.withEnsembles(
                List.of(
                        new PointForecast(
                                Skies.forecast(Skies.FARM, amounts, chances),
                                List.of(new WeightedEnsemble(here, 1)),
                                Recalibration.NONE),
                        new PointForecast(
                                Skies.forecast(OTHER, amounts, chances),
                                List.of(new WeightedEnsemble(there, 1)),
                                Recalibration.NONE)),
                new TraceSettings(4, 1, Skies.hours(0, 6)),
                Skies.EVEN_YEAR);
        assertThat(ranks(totals(made.get(0).traces()))).containsExactly(4, 1, 3, 2);
        assertThat(ranks(totals(made.get(1).traces()))).containsExactly(2, 1, 4, 3);
    }

    private static int[] ranks(double[] values) {
        return Arrays.stream(values)
                .mapToInt(v -> (int) Arrays.stream(values).filter(w -> w <= v).count())
                .toArray();
    }

    @Test
    void aWeightOfZeroIsRefused() {
        assertThatThrownBy(() -> new WeightedEnsemble(ensemble(burst(1), burst(2)), 0))
                .hasMessage("weight is 0.0, must be above 0");
    }
}
