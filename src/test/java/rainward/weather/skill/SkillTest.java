package rainward.weather.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.weather.marginal.RainMarginals;
import rainward.weather.marginal.WetPeriod;
import rainward.weather.trace.PointForecast;
import rainward.weather.trace.Skies;
import rainward.weather.trace.Totals;
import rainward.weather.trace.TraceMaker;
import rainward.weather.trace.TraceSettings;
import rainward.weather.trace.Traces;

/** How good chances were, and what is learnt from it. */
class SkillTest {

    /** Chances and outcomes reckoned by hand outside the program. */
    static final List<ForecastCase> TEN = cases(
            new double[] {.1, .1, .3, .3, .7, .7, .9, .9, .5, .5},
            new int[] {0, 0, 0, 1, 1, 0, 1, 1, 1, 0});

    static List<ForecastCase> cases(double[] chances, int[] wet) {
        return IntStream.range(0, chances.length)
                .mapToObj(i -> new ForecastCase(12, chances[i], wet[i] == 1))
                .toList();
    }

    /** Forecasts of a service that says p and gets rain with chance {@code p^2}: wet-biased. */
    static List<ForecastCase> tooWet(int count, double leadHours, long seed) {
        var random = new SplittableRandom(seed);
        List<ForecastCase> cases = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double p = random.nextInt(0, 11) / 10.0;
            cases.add(new ForecastCase(leadHours, p, random.nextDouble() < p * p));
        }
        return cases;
    }

    @Nested
    class Brier {

        @Test
        void scoreAndItsPartsAreThoseReckonedByHand() {
            BrierScore score = BrierScore.of(TEN);
            assertThat(score.brierScore()).isCloseTo(0.170, within(1e-12));
            assertThat(score.reliabilityScore()).isCloseTo(0.020, within(1e-12));
            assertThat(score.resolutionScore()).isCloseTo(0.100, within(1e-12));
            assertThat(score.uncertaintyScore()).isCloseTo(0.250, within(1e-12));
            assertThat(score.skill()).isCloseTo(0.32, within(1e-12));
        }

        /** Murphy 1973: the parts add up to the score, whatever the cases. */
        @Test
        void thePartsAddUpToTheScore() {
            for (int seed = 0; seed < 100; seed++) {
                BrierScore s = BrierScore.of(tooWet(1 + seed * 7, 5, seed));
                assertThat(s.reliabilityScore() - s.resolutionScore() + s.uncertaintyScore())
                        .isCloseTo(s.brierScore(), within(1e-12));
            }
        }

        @Test
        void alwaysSayingTheUsualHasNoSkillAgainstIt() {
            List<ForecastCase> usual =
                    TEN.stream().map(c -> new ForecastCase(12, 0.3, c.wet())).toList();
            assertThat(BrierScore.of(usual).skillAgainst(always(0.3))).isZero();
            assertThat(BrierScore.of(TEN).skillAgainst(always(0.5))).isCloseTo(0.32, within(1e-12));
        }

        private static double always(double chance) {
            return BrierScore.of(TEN.stream()
                            .map(c -> new ForecastCase(12, chance, c.wet()))
                            .toList())
                    .brierScore();
        }

        @Test
        void noCasesAreRefused() {
            assertThatThrownBy(() -> BrierScore.of(List.of()))
                    .hasMessage("a score needs at least one case");
        }
    }

    @Nested
    class Reliability {

        @Test
        void rowsCountWhatWasSeenByTenths() {
            List<ReliabilityTable.Row> rows = ReliabilityTable.of(TEN).rows();
            assertThat(rows).hasSize(5);
            assertThat(rows.get(1).forecastProbability()).isCloseTo(0.3, within(1e-12));
            assertThat(rows.get(1).seenFraction()).isEqualTo(0.5);
            assertThat(rows).extracting(ReliabilityTable.Row::cases).containsOnly(2);
        }

        /** Wilson's interval for 4 of 10 at 90 %: 0.1942 to 0.6484, reckoned outside. */
        @Test
        void theIntervalIsWilsons() {
            ReliabilityTable.Row row = ReliabilityTable.of(
                            cases(Skies.all(10, 0.55), new int[] {1, 1, 1, 1, 0, 0, 0, 0, 0, 0}))
                    .rows()
                    .get(0);
            assertThat(row.lowFraction()).isCloseTo(WILSON_LOW, within(5e-4));
            assertThat(row.highFraction()).isCloseTo(WILSON_HIGH, within(5e-4));
        }

        static final double WILSON_LOW = 0.1942;
        static final double WILSON_HIGH = 0.6484;

        @Test
        void certaintyBelongsToTheLastTenth() {
            assertThat(ReliabilityTable.of(cases(new double[] {1, 0.95}, new int[] {1, 1}))
                            .rows())
                    .hasSize(1);
        }

        @Test
        void noCasesMakeAnEmptyTable() {
            assertThat(ReliabilityTable.of(List.of()).rows()).isEmpty();
        }
    }

    @Nested
    class Isotonic {

        @Test
        void violatorsArePooled() {
            IsotonicCurve curve = IsotonicCurve.through(List.of(
                    new IsotonicCurve.Point(0.1, 0, 1),
                    new IsotonicCurve.Point(0.2, 1, 1),
                    new IsotonicCurve.Point(0.3, 0, 1),
                    new IsotonicCurve.Point(0.4, 1, 1)));
            assertThat(curve.at(0.1)).isZero();
            assertThat(curve.at(0.25)).isCloseTo(0.5, within(1e-12));
            assertThat(curve.at(0.4)).isEqualTo(1);
            assertThat(curve.at(0.15)).isCloseTo(0.25, within(1e-12));
        }

        @Test
        void aHeavyPointWeighsByItsCases() {
            IsotonicCurve curve = IsotonicCurve.through(List.of(
                    new IsotonicCurve.Point(0.2, 0.6, 3), new IsotonicCurve.Point(0.4, 0.2, 1)));
            assertThat(curve.at(0.3)).isCloseTo(0.5, within(1e-12));
        }

        @Test
        void theCurveNeverFalls() {
            for (int seed = 0; seed < 50; seed++) {
                IsotonicCurve curve = IsotonicCurve.through(tooWet(60, 1, seed).stream()
                        .map(c -> new IsotonicCurve.Point(c.probability(), c.outcome(), 1))
                        .toList());
                for (int i = 1; i <= 100; i++) {
                    assertThat(curve.at(i / 100.0))
                            .isGreaterThanOrEqualTo(curve.at((i - 1) / 100.0) - 1e-12);
                }
            }
        }
    }

    @Nested
    class Learning {

        @Test
        void tooFewCasesTeachNothing() {
            Recalibration taught = Recalibration.of(tooWet(199, 12, 1), 200);
            assertThat(taught.knows(12)).isFalse();
            assertThat(taught.cases(12)).isEqualTo(199);
            assertThat(taught.apply(0.5, 12)).isEqualTo(0.5);
        }

        @Test
        void aWetBiasIsTakenOutAtItsLeadTimeOnly() {
            Recalibration taught = Recalibration.of(tooWet(10_000, 12, 2), 200);
            assertThat(taught.apply(0.5, 12)).isCloseTo(0.25, within(0.05));
            assertThat(taught.apply(0.8, 12)).isCloseTo(0.64, within(0.05));
            assertThat(taught.apply(0.5, 60)).isEqualTo(0.5);
        }

        /** Learnt on one half, judged on the other. */
        @Test
        void newForecastsScoreBetterThanBefore() {
            Recalibration taught = Recalibration.of(tooWet(1000, 12, 3), 200);
            List<ForecastCase> fresh = tooWet(3000, 12, 4);
            List<ForecastCase> moved = fresh.stream()
                    .map(c -> new ForecastCase(12, taught.apply(c.probability(), 12), c.wet()))
                    .toList();
            BrierScore before = BrierScore.of(fresh);
            BrierScore after = BrierScore.of(moved);
            assertThat(after.brierScore()).isLessThan(before.brierScore() - 0.01);
            assertThat(after.reliabilityScore()).isLessThan(before.reliabilityScore() / 4);
        }

        @Test
        void aFewCasesNeverMakeNeverOrAlways() {
            Recalibration taught = Recalibration.of(
                    IntStream.range(0, 200)
                            .mapToObj(i -> new ForecastCase(6, 0.4, false))
                            .toList(),
                    200);
            assertThat(taught.apply(0.4, 6)).isBetween(0.001, 0.1);
            assertThat(taught.apply(0.95, 6)).isBetween(0.5, 0.99);
            assertThat(taught.apply(0, 6)).isZero();
        }

        @Test
        void marginalsTakeTheTaughtChanceAndKeepTheWetAmount() {
            Recalibration taught = Recalibration.of(tooWet(3000, 0, 5), 200);
            RainMarginals before = Skies.marginals(
                    6, List.of(Skies.amount(0, 6, 5)), List.of(Skies.chance(0, 6, 0.5)));
            RainMarginals after = before.recalibrated(taught, Skies.START);
            WetPeriod period = after.periods().get(0);
            assertThat(period.probability()).isEqualTo(taught.apply(0.5, 0)).isLessThan(0.35);
            assertThat(period.meanWetMm()).isCloseTo(10, within(1e-9));
            assertThat(after.warnings())
                    .containsExactly(
                            "1 of 1 chances of rain are corrected by what past forecasts came to");
        }

        @Test
        void tracesFollowTheTaughtChance() {
            Recalibration taught = Recalibration.of(tooWet(3000, 0, 5), 200);
            var forecast = new PointForecast(
                    Skies.forecast(
                            Skies.FARM,
                            List.of(Skies.amount(0, 6, 5)),
                            List.of(Skies.chance(0, 6, 0.5))),
                    List.of(),
                    taught);
            Traces traces = TraceMaker.withEnsembles(
                            List.of(forecast),
                            new TraceSettings(200, 1, Skies.hours(0, 6)),
                            Skies.EVEN_YEAR)
                    .get(0)
                    .traces();
            long wet = Totals.wet(Totals.ofMm(traces, Skies.hours(0, 6)));
            assertThat((double) wet).isCloseTo(200 * taught.apply(0.5, 0), within(1.0));
        }
    }
}
