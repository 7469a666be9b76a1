package rainward.weather.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.weather.marginal.WetPeriod;
import rainward.weather.source.ForecastSeries;

/** Traces keep what was forecast and hang together as set. */
class TraceMakerTest {

    static final int TRACES = 200;
    static final TraceSettings TEN_DAYS = new TraceSettings(TRACES, 20260714, Skies.hours(0, 240));

    static PointTraces made(ForecastSeries forecast, TraceSettings settings) {
        return TraceMaker.make(List.of(forecast), settings, Skies.EVEN_YEAR).get(0);
    }

    @Nested
    class Marginals {

        @ParameterizedTest(name = "periods of {0} h")
        @ValueSource(ints = {1, 2, 6, 12})
        void eachPeriodIsWetAsOftenAsForecastToTheLastTrace(int hours) {
            PointTraces made = made(Skies.changeable(Skies.FARM, hours), TEN_DAYS);
            for (WetPeriod period : made.marginals().periods()) {
                double[] totals = Totals.ofMm(made.traces(), period.window());
                assertThat((double) Totals.wet(totals))
                        .as("%s", period)
                        .isCloseTo(TRACES * period.probability(), within(1.0));
            }
        }

        @ParameterizedTest(name = "periods of {0} h")
        @ValueSource(ints = {1, 2, 6, 12})
        void eachPeriodBringsTheAmountForecast(int hours) {
            PointTraces made = made(Skies.changeable(Skies.FARM, hours), TEN_DAYS);
            for (WetPeriod period : made.marginals().periods()) {
                double[] totals = Totals.ofMm(made.traces(), period.window());
                // One trace more or less is wet: its share of the mean is the tolerance.
                assertThat(Totals.mean(totals))
                        .as("%s", period)
                        .isCloseTo(period.meanMm(), within(period.meanWetMm() / TRACES + 1e-9));
            }
        }

        @ParameterizedTest(name = "periods of {0} h")
        @ValueSource(ints = {1, 2, 6, 12})
        void anHourWithoutChanceIsDryOnEveryTrace(int hours) {
            PointTraces made = made(Skies.changeable(Skies.FARM, hours), TEN_DAYS);
            for (WetPeriod period : made.marginals().periods()) {
                if (period.probability() == 0) {
                    assertThat(Totals.ofMm(made.traces(), period.window())).containsOnly(0);
                }
            }
        }

        @Test
        void partsOfALongChanceGetTheirOwnAmounts() {
            var forecast = Skies.forecast(
                    Skies.FARM,
                    List.of(Skies.amount(0, 6, 1), Skies.amount(6, 12, 5)),
                    List.of(Skies.chance(0, 12, 0.8)));
            var settings = new TraceSettings(2000, 7, Skies.hours(0, 12));
            Traces traces = made(forecast, settings).traces();
            assertThat(Totals.mean(Totals.ofMm(traces, Skies.hours(0, 6))))
                    .isCloseTo(1, within(0.15));
            assertThat(Totals.mean(Totals.ofMm(traces, Skies.hours(6, 12))))
                    .isCloseTo(5, within(0.15));
        }

        @Test
        void rainIsNeverBelowZeroAndItsPeakNeverBeyondTwiceTheHour() {
            Traces traces = made(Skies.changeable(Skies.FARM), TEN_DAYS).traces();
            for (int h = 0; h < traces.hours(); h++) {
                for (int n = 0; n < TRACES; n++) {
                    double mm = traces.rainMm()[h][n];
                    assertThat(mm).isNotNegative();
                    assertThat(traces.peak30MmPerH()[h][n]).isBetween(mm, 2 * mm);
                }
            }
        }

        /** Yin, Xie, Nearing and Wang 2007: factor 1.668 from fixed 60-minute data. */
        @Test
        void tenMillimetresInAnHourPeakNear17() {
            var forecast = Skies.forecast(
                    Skies.FARM, List.of(Skies.amount(0, 1, 10)), List.of(Skies.chance(0, 1, 1)));
            Traces traces =
                    made(forecast, new TraceSettings(1, 1, Skies.hours(0, 1))).traces();
            assertThat(traces.rainMm()[0][0]).isCloseTo(10, within(1e-9));
            assertThat(traces.peak30MmPerH()[0][0]).isCloseTo(16.68, within(1e-9));
        }
    }

    @Nested
    class Seeds {

        @Test
        void theSameSeedGivesTheSameTraces() {
            var forecast = Skies.changeable(Skies.FARM);
            assertThat(made(forecast, TEN_DAYS).traces().rainMm())
                    .isDeepEqualTo(made(forecast, TEN_DAYS).traces().rainMm());
        }

        @Test
        void anotherSeedGivesOtherTraces() {
            var forecast = Skies.changeable(Skies.FARM);
            var other = new TraceSettings(TRACES, 1, TEN_DAYS.horizon());
            assertThat(Arrays.deepEquals(
                            made(forecast, TEN_DAYS).traces().rainMm(),
                            made(forecast, other).traces().rainMm()))
                    .isFalse();
        }

        @Test
        void aRoundSixHoursLaterMeetsNearlyTheSameRain() {
            var forecast = Skies.changeable(Skies.FARM);
            var later = new TraceSettings(TRACES, 20260714, Skies.hours(6, 240));
            Window day5 = Skies.hours(96, 120);
            double[] before = Totals.ofMm(made(forecast, TEN_DAYS).traces(), day5);
            double[] after = Totals.ofMm(made(forecast, later).traces(), day5);
            assertThat(RankCorrelation.of(before, after)).isGreaterThan(0.95);
        }
    }

    @Nested
    class Dependence {

        static final GeoPoint NEAR = new GeoPoint(42.2, -84.78); // 10 km
        static final GeoPoint FAR = new GeoPoint(42.2, -84.17); // 60 km

        /** One period at three farms, each with the same chance. */
        private List<PointTraces> farms(double probability, int traces) {
            return TraceMaker.make(
                    IntStream.range(0, 3)
                            .mapToObj(i -> Skies.forecast(
                                    List.of(Skies.FARM, NEAR, FAR).get(i),
                                    List.of(Skies.amount(0, 6, 6)),
                                    List.of(Skies.chance(0, 6, probability))))
                            .toList(),
                    new TraceSettings(traces, 5, Skies.hours(0, 6)),
                    Skies.EVEN_YEAR);
        }

        @Test
        void farmsFurtherApartShareLessRain() {
            List<PointTraces> farms = farms(1, 4000);
            Window all = Skies.hours(0, 6);
            double[] here = Totals.ofMm(farms.get(0).traces(), all);
            double near = RankCorrelation.of(here, Totals.ofMm(farms.get(1).traces(), all));
            double far = RankCorrelation.of(here, Totals.ofMm(farms.get(2).traces(), all));
            assertThat(near).isCloseTo(expectedRank(Skies.FARM, NEAR), within(0.03));
            assertThat(far).isCloseTo(expectedRank(Skies.FARM, FAR), within(0.04));
            assertThat(far).isLessThan(near);
        }

        /** Spearman's rank correlation of a bivariate normal, 6/pi asin(r/2) (Kruskal 1958). */
        private double expectedRank(GeoPoint a, GeoPoint b) {
            double r = Math.exp(-a.distanceKm(b) / 40);
            return 6 / Math.PI * Math.asin(r / 2);
        }

        @Test
        void fieldsInOnePlaceGetOneRain() {
            var forecast = Skies.changeable(Skies.FARM);
            List<PointTraces> two =
                    TraceMaker.make(List.of(forecast, forecast), TEN_DAYS, Skies.EVEN_YEAR);
            assertThat(two.get(0).traces().rainMm())
                    .isDeepEqualTo(two.get(1).traces().rainMm());
        }

        @Test
        void aWetMorningMakesTheEveningLikelier() {
            var forecast = Skies.forecast(
                    Skies.FARM,
                    List.of(Skies.amount(0, 6, 3), Skies.amount(6, 12, 0), Skies.amount(12, 18, 3)),
                    List.of(
                            Skies.chance(0, 6, 0.4),
                            Skies.chance(6, 12, 0),
                            Skies.chance(12, 18, 0.4)));
            Traces traces = made(forecast, new TraceSettings(10_000, 3, Skies.hours(0, 18)))
                    .traces();
            double[] first = Totals.ofMm(traces, Skies.hours(0, 6));
            double[] second = Totals.ofMm(traces, Skies.hours(12, 18));
            long both = IntStream.range(0, first.length)
                    .filter(n -> first[n] > 0 && second[n] > 0)
                    .count();
            // exp(-12/21) is a latent correlation of 0.565; independent halves would give 0.160.
            assertThat(both / 10_000.0).isCloseTo(0.2508, within(0.01));
        }
    }

    @Test
    void airRidesAlongOverTheWholeHorizon() {
        PointTraces made = made(Skies.changeable(Skies.FARM), TEN_DAYS);
        assertThat(made.traces().air().start()).isEqualTo(Skies.START);
        assertThat(made.traces().air().hours()).isEqualTo(240);
        assertThat(made.warnings()).anyMatch(w -> w.contains("usual course"));
        assertThat(Duration.ofHours(made.traces().sun().radiationMjPerM2().length))
                .isEqualTo(TEN_DAYS.horizon().length());
    }
}
