package rainward.weather.marginal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Month;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.Window;
import rainward.weather.climate.Climate;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.trace.Skies;

/** Amounts and chances in their own intervals become periods that keep both. */
class RainMarginalsTest {

    static final MonthlyClimate JULY = Skies.EVEN_YEAR.months().get(6);

    /** Expected rain of the parts that lie in a window [mm]. */
    static double meanMm(RainMarginals marginals, Window window) {
        return marginals.periods().stream()
                .flatMap(period -> period.parts().stream())
                .filter(part -> part.window().overlaps(window))
                .mapToDouble(WetPeriod.Part::meanMm)
                .sum();
    }

    @Nested
    class Rasters {

        @Test
        void oneRasterIsTakenAsItIs() {
            RainMarginals made = Skies.marginals(
                    6, List.of(Skies.amount(0, 6, 12)), List.of(Skies.chance(0, 6, 0.6)));
            assertThat(made.periods()).hasSize(1);
            assertThat(made.periods().get(0).probability()).isEqualTo(0.6);
            assertThat(made.periods().get(0).meanWetMm()).isCloseTo(20, within(1e-9));
            assertThat(made.warnings()).isEmpty();
        }

        @Test
        void anAmountOverTwoChancesIsSharedByChance() {
            RainMarginals made = Skies.marginals(
                    12,
                    List.of(Skies.amount(0, 12, 8)),
                    List.of(Skies.chance(0, 6, 0.2), Skies.chance(6, 12, 0.6)));
            assertThat(meanMm(made, Skies.hours(0, 6))).isCloseTo(2, within(1e-9));
            assertThat(meanMm(made, Skies.hours(6, 12))).isCloseTo(6, within(1e-9));
        }

        @Test
        void aChanceOverTwoAmountsIsOnePeriodOfTwoParts() {
            RainMarginals made = Skies.marginals(
                    6,
                    List.of(Skies.amount(0, 3, 1), Skies.amount(3, 6, 5)),
                    List.of(Skies.chance(0, 6, 0.8)));
            assertThat(made.periods()).hasSize(1);
            assertThat(made.periods().get(0).parts())
                    .satisfiesExactly(
                            first -> assertThat(first.meanMm()).isCloseTo(1, within(1e-9)),
                            second -> assertThat(second.meanMm()).isCloseTo(5, within(1e-9)));
        }

        @Test
        void aMergedChanceOfThirtyHoursIsCutEverySixHoursOfUtc() {
            RainMarginals made = Skies.marginals(
                    30, List.of(Skies.amount(0, 30, 6)), List.of(Skies.chance(0, 30, 0.3)));
            assertThat(made.periods().stream().map(WetPeriod::window))
                    .containsExactly(
                            Skies.hours(0, 3),
                            Skies.hours(3, 9),
                            Skies.hours(9, 15),
                            Skies.hours(15, 21),
                            Skies.hours(21, 27),
                            Skies.hours(27, 30));
            assertThat(made.periods()).allMatch(period -> period.probability() == 0.3);
            assertThat(made.meanMm()).isCloseTo(6, within(1e-9));
        }

        @Test
        void anIntervalThatBeganInThePastCountsByItsHoursAhead() {
            RainMarginals made = Skies.marginals(
                    4, List.of(Skies.amount(-2, 4, 6)), List.of(Skies.chance(-2, 4, 0.5)));
            assertThat(made.meanMm()).isCloseTo(4, within(1e-9));
        }
    }

    @Nested
    class Rules {

        @Test
        void whereAmountsStopTheMonthSpeaksAndTheUserIsTold() {
            RainMarginals made = Skies.marginals(
                    12,
                    List.of(Skies.amount(0, 6, 3)),
                    List.of(Skies.chance(0, 6, 0.5), Skies.chance(6, 12, 0.4)));
            WetPeriod late = made.periods().get(1);
            assertThat(late.meanWetMm()).isCloseTo(JULY.meanWetMm(6), within(1e-9));
            assertThat(late.climateShare()).isEqualTo(1);
            assertThat(made.warnings())
                    .containsExactly(
                            "rain 2026-07-14T15:00:00Z to 2026-07-14T21:00:00Z: no rain amounts are"
                                    + " forecast; the usual wet period of July is used");
        }

        @Test
        void beyondTheForecastTheMonthsChanceAndAmountHold() {
            RainMarginals made = Skies.marginals(
                    30, List.of(Skies.amount(0, 6, 0)), List.of(Skies.chance(0, 6, 0)));
            double usualMm = JULY.meanDayMm();
            assertThat(meanMm(made, Skies.hours(6, 30))).isCloseTo(usualMm, within(1e-9));
            assertThat(made.warnings())
                    .anyMatch(w -> w.contains("usual chance and amount of July"));
        }

        /** Ten days from 28 July at 42.2 N: July is dry here, August wet; both are named. */
        @Test
        void beyondTheForecastEachDayHasItsOwnMonth() {
            List<MonthlyClimate> months = new ArrayList<>(Skies.EVEN_YEAR.months());
            months.set(6, new MonthlyClimate(Month.JULY, 0.02, 3, 14, 28));
            months.set(7, new MonthlyClimate(Month.AUGUST, 0.6, 10, 14, 28));
            int to28July = 14 * 24;
            RainMarginals made = RainMarginals.of(
                    Skies.forecast(Skies.FARM, List.of(Skies.amount(0, 6, 0)), List.of()),
                    Skies.hours(to28July, to28July + 240),
                    new Climate("two months", 250, months));
            // From 28 July, 09:00 UTC; by the sun of 85 W August begins at 05:40 UTC, hour 93.
            assertThat(meanMm(made, Skies.hours(to28July, to28July + 87))).isLessThan(0.3);
            assertThat(meanMm(made, Skies.hours(to28July + 93, to28July + 240)))
                    .isCloseTo(147 / 24.0 * 0.6 * 10, within(1e-6));
            assertThat(made.warnings()).anyMatch(w -> w.contains("of July and August is used"));
        }

        @Test
        void aTraceAmountWithoutChanceIsLeftOutByName() {
            RainMarginals made = Skies.marginals(
                    6, List.of(Skies.amount(0, 6, 0.2)), List.of(Skies.chance(0, 6, 0)));
            assertThat(made.meanMm()).isZero();
            assertThat(made.warnings()).singleElement().asString().contains("0.20 mm");
        }

        @Test
        void aRealAmountAgainstNoChanceMakesTheChanceUnknown() {
            RainMarginals made = Skies.marginals(
                    6, List.of(Skies.amount(0, 6, 5)), List.of(Skies.chance(0, 12, 0)));
            assertThat(made.meanMm()).isCloseTo(5, within(1e-9));
            assertThat(made.periods().get(0).probability())
                    .isCloseTo(5 / (5 + JULY.meanWetMm(6) / 2), within(1e-9));
            assertThat(made.warnings()).anyMatch(w -> w.contains("against no chance"));
        }

        @Test
        void aChanceWithoutAmountRainsTheLeastMeasurable() {
            RainMarginals made = Skies.marginals(
                    6, List.of(Skies.amount(0, 6, 0)), List.of(Skies.chance(0, 6, 0.2)));
            assertThat(made.periods().get(0).probability()).isEqualTo(0.2);
            assertThat(made.periods().get(0).meanWetMm()).isCloseTo(0.254, within(1e-9));
        }

        @Test
        void aTinyChanceOfAHugeAmountIsRaisedToAPlausibleOne() {
            RainMarginals made = Skies.marginals(
                    6, List.of(Skies.amount(0, 6, 4)), List.of(Skies.chance(0, 6, 0.01)));
            assertThat(made.meanMm()).isCloseTo(4, within(1e-9));
            assertThat(made.periods().get(0).meanWetMm()).isCloseTo(32, within(1e-9));
        }

        @Test
        void withoutChancesAmountsAloneDecideAndZeroStaysDry() {
            RainMarginals made = Skies.marginals(
                    12, List.of(Skies.amount(0, 6, 0), Skies.amount(6, 12, 9)), List.of());
            assertThat(made.periods().get(0).probability()).isZero();
            assertThat(made.periods().get(1).probability()).isBetween(0.6, 0.9);
            assertThat(made.warnings()).anyMatch(w -> w.contains("judged from the amounts"));
        }

        @Test
        void aServiceWithoutAnyRainLeavesTheMonth() {
            RainMarginals made = Skies.marginals(240, List.of(), List.of());
            assertThat(made.meanMm()).isCloseTo(10 * JULY.meanDayMm(), within(1e-6));
        }
    }

    @Nested
    class Laws {

        /** Random rasters: amounts of 1 to 12 h, chances of 1 to 40 h, no chance below a tenth. */
        @Test
        void sumsOverIntervalsEqualTheSources() {
            var random = new SplittableRandom(20260714);
            for (int round = 0; round < 300; round++) {
                List<RainAmount> amounts = new ArrayList<>();
                for (int h = -5; h < 120; ) {
                    int to = h + 1 + random.nextInt(12);
                    amounts.add(Skies.amount(h, to, 0.3 * (to - h) + random.nextDouble(5)));
                    h = to;
                }
                List<RainChance> chances = new ArrayList<>();
                for (int h = -3; h < 120; ) {
                    int to = h + 1 + random.nextInt(40);
                    chances.add(Skies.chance(h, to, 0.3 + random.nextDouble(0.7)));
                    h = to;
                }
                RainMarginals made = Skies.marginals(120, amounts, chances);
                assertThat(made.periods().get(0).window().from()).isEqualTo(Skies.START);
                for (RainAmount amount : amounts) {
                    boolean inside = !amount.window().from().isBefore(Skies.START)
                            && !amount.window().to().isAfter(Skies.hours(0, 120).to());
                    if (inside) {
                        assertThat(meanMm(made, amount.window()))
                                .isCloseTo(amount.amountMm(), within(1e-9));
                    }
                }
            }
        }

        @Test
        void periodsCoverTheHorizonWithoutGaps() {
            RainMarginals made = Skies.marginals(
                    100,
                    List.of(Skies.amount(3, 9, 1), Skies.amount(20, 32, 4)),
                    List.of(Skies.chance(5, 8, 0.4), Skies.chance(60, 90, 0.2)));
            Window all = Skies.hours(0, 100);
            assertThat(made.periods().get(0).window().from()).isEqualTo(all.from());
            for (int i = 1; i < made.periods().size(); i++) {
                assertThat(made.periods().get(i).window().from())
                        .isEqualTo(made.periods().get(i - 1).window().to());
            }
            assertThat(made.periods().get(made.periods().size() - 1).window().to())
                    .isEqualTo(all.to());
        }
    }
}
