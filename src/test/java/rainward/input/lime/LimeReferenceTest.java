package rainward.input.lime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.input.SoilTest;
import rainward.input.Us;

/** Lime against published rules and worked examples. */
class LimeReferenceTest {
    static final FinenessSystem NEW_YORK =
            new FinenessSystem("new york", Map.of(20, 0.4, 60, 0.4, 100, 0.2));
    static final LimeNeed.Standard NINETY = new LimeNeed.Standard(0.9, 20.32);
    static final ExchangeAcidityRule CAROLINA = new ExchangeAcidityRule("north carolina", NINETY);
    /** Tri-State 1995 (E-2567): the three lines are from memory. */
    static final BufferIndexRule TRI_STATE = new BufferIndexRule(
            "tri-state",
            Map.of(
                    6.8, BufferIndexRule.Line.ofShortTons(71.4, 1.03),
                    6.5, BufferIndexRule.Line.ofShortTons(60.4, 0.87),
                    6.0, BufferIndexRule.Line.ofShortTons(49.3, 0.71)),
            NINETY);

    static double tons(LimeNeed need) {
        return Us.lbPerAcre(need.rateKgPerHa()) / 2_000;
    }

    static SoilTest test(double ph, String method, double bufferPh) {
        return new SoilTest(
                "Home 3",
                LocalDate.of(2026, 4, 1),
                new SoilTest.Acidity(ph, Optional.of(new SoilTest.Buffer(method, bufferPh))),
                SoilTest.Nutrients.UNKNOWN);
    }

    @Nested
    class Quality {

        /** Cornell (CCA PO 41): the rule is published; the sum for this lime was worked here. */
        @Test
        void aLimeOf92PerCentPassing95And70And50HasAnEnvOf70() {
            Map<Integer, Double> passing = Map.of(20, 0.95, 60, 0.70, 100, 0.50);

            assertThat(NEW_YORK.finenessFraction(passing).orElseThrow())
                    .isCloseTo(0.760, within(1e-12));
            assertThat(new LimeQuality("ground", 0.92, 0, passing, 0.03)
                            .effectiveFraction(NEW_YORK)
                            .orElseThrow())
                    .isCloseTo(0.6992, within(1e-12));
        }

        /** The interval form as printed: 0.40 (p20 - p60) + 0.80 (p60 - p100) + 1.00 p100. */
        @Test
        void theWeightsAreTheIntervalsOfTheRuleInOtherWords() {
            double p20 = 0.9;
            double p60 = 0.6;
            double p100 = 0.35;

            assertThat(NEW_YORK.finenessFraction(Map.of(20, p20, 60, p60, 100, p100))
                            .orElseThrow())
                    .isCloseTo(0.4 * (p20 - p60) + 0.8 * (p60 - p100) + p100, within(1e-12));
        }

        @Test
        void aMissingSieveLeavesTheQualityOpenAndIsAskedFor() {
            LimeQuality coarse =
                    new LimeQuality("quarry", 0.92, 0, Map.of(20, 0.95, 60, 0.7), 0.03);

            assertThat(coarse.effectiveFraction(NEW_YORK)).isEmpty();
            assertThat(NEW_YORK.gap("quarry").text()).contains("[20, 60, 100]").contains("quarry");
        }

        /** Penn State: recommendation x 100 / CCE; 5 lb at a CCE of 70 are 7 (exact 7.14). */
        @Test
        void weakerLimeTakesMoreAtPennState() {
            LimeNeed five = new LimeNeed(5, new LimeNeed.Standard(1.0, 20));

            assertThat(five.rateOf(0.70, 20)).isCloseTo(7.14, within(0.005));
        }

        /** Missouri (MU Extension): 1200 lb of ENM at 400 lb a ton are 3 tons. */
        @Test
        void threeTonsDoTheWorkOf1200PoundsOfEnm() {
            LimeNeed enm = new LimeNeed(Us.kgPerHa(1_200), new LimeNeed.Standard(1.0, 15));

            assertThat(Us.lbPerAcre(enm.rateOf(400 / 2_000.0, 15)) / 2_000)
                    .isCloseTo(3, within(1e-9));
        }
    }

    @Nested
    class NorthCarolina {

        /** ncagr.gov: pH 5.0, target 6.0, Ac 1.2; 0.76 is printed, 0.75 is exact. */
        @Test
        void theWorkedExampleOfTheStateGivesThreeQuartersOfATon() {
            assertThat(ExchangeAcidityRule.acidityCmolPerL(6.3)).isCloseTo(1.2, within(1e-9));
            assertThat(tons(CAROLINA.need(5.0, 6.3, 6.0)))
                    .isCloseTo(0.750, within(1e-9))
                    .isCloseTo(0.76, within(0.011));
        }

        @Test
        void lessThanThreeTenthsOfATonIsNone() {
            assertThat(tons(CAROLINA.need(5.9, 6.3, 6.0))).isZero();
        }

        @Test
        void theCreditOfEarlierLimeFallsByEightPerCentAMonth() {
            assertThat(ExchangeAcidityRule.creditKgPerHa(1_000, 5, false))
                    .isCloseTo(600, within(1e-9));
            assertThat(ExchangeAcidityRule.creditKgPerHa(1_000, 5, true))
                    .isCloseTo(200, within(1e-9));
            assertThat(ExchangeAcidityRule.creditKgPerHa(1_000, 40, false)).isZero();
        }
    }

    @Nested
    class TriState {

        /** Computed from the equations, which are themselves from memory. */
        @ParameterizedTest(name = "LTI {0}: {1}, {2}, {3} tons")
        @CsvSource({
            "68, 1.4, 1.2, 1.0",
            "66, 3.4, 3.0, 2.4",
            "64, 5.5, 4.7, 3.9",
            "62, 7.5, 6.5, 5.3",
            "60, 9.6, 8.2, 6.7"
        })
        void tonsToThreeTargets(double index, double to68, double to65, double to60) {
            assertEquals(to68, tons(TRI_STATE.need(5.0, index / 10, 6.8)), 0.0501);
            assertEquals(to65, tons(TRI_STATE.need(5.0, index / 10, 6.5)), 0.0501);
            assertEquals(to60, tons(TRI_STATE.need(5.0, index / 10, 6.0)), 0.0501);
        }

        @Test
        void betweenTwoTargetsTheRateLiesBetween() {
            double middle = tons(TRI_STATE.need(5.0, 6.4, 6.25));

            assertThat(middle)
                    .isCloseTo(
                            (tons(TRI_STATE.need(5.0, 6.4, 6.0))
                                            + tons(TRI_STATE.need(5.0, 6.4, 6.5)))
                                    / 2,
                            within(1e-9));
        }

        /** Tri-State 1995: lime when pH is 0.2 to 0.3 below the goal. */
        @Test
        void aTenthBelowTheGoalIsNotLimed() {
            assertThat(tons(TRI_STATE.need(6.4, 6.6, 6.5))).isZero();
            assertThat(tons(TRI_STATE.need(6.3, 6.6, 6.5))).isPositive();
        }

        /** Tri-State 1995: no-till and sod take half, for the rates are for 8 inches. */
        @Test
        void fourInchesTakeHalf() {
            LimeNeed need = TRI_STATE.need(5.5, 6.4, 6.5);

            assertThat(need.rateOf(0.9, 10.16)).isCloseTo(need.rateKgPerHa() / 2, within(1e-6));
            assertThat(need.rateOf(0.9, 20.32)).isCloseTo(need.rateKgPerHa(), within(1e-6));
        }
    }

    @Nested
    class AnotherLaboratory {

        @Test
        void aBufferReadingOfAnotherMethodIsNotUsed() {
            assertThat(TRI_STATE.need(test(5.4, "Mehlich", 6.2), 6.5)).isEmpty();
            assertThat(TRI_STATE.gap(test(5.4, "Mehlich", 6.2)).orElseThrow().text())
                    .contains("Mehlich")
                    .contains("SMP buffer pH");
            assertThat(TRI_STATE.gap(test(5.4, "smp", 6.2))).isEmpty();
        }
    }

    @Nested
    class Pellets {
        private final FinenessSystem one = new FinenessSystem("one", Map.of(60, 1.0));

        private LimeQuality lime(String name, double effective, double usdPerKg) {
            return new LimeQuality(name, effective, 0, Map.of(60, 1.0), usdPerKg);
        }

        /** Mullen (Ohio State): 3 tons at ENP 2000 do the work of 6 tons at ENP 1000. */
        @Test
        void threeTonsOfPelletsDoTheWorkOfSixOfGroundLime() {
            double work = Us.kgPerHa(6 * 1_000);

            LimeOption pellets =
                    LimeOption.of(lime("pellets", 1.0, 0.25), one, work).orElseThrow();
            LimeOption ground =
                    LimeOption.of(lime("ground", 0.5, 0.04), one, work).orElseThrow();

            assertThat(Us.lbPerAcre(pellets.rateKgPerHa()) / 2_000).isCloseTo(3, within(1e-9));
            assertThat(Us.lbPerAcre(ground.rateKgPerHa()) / 2_000).isCloseTo(6, within(1e-9));
        }

        /** Flanary et al.: 6 tons of ENM 377 worked, 200 lb of ENM 580 pellets a year did not. */
        @Test
        void aYearOfPelletsInMissouriWasAFortiethOfTheNeed() {
            double need = 6 * 377;
            double year = Us.lbPerAcre(new LimeOwed("F", Us.kgPerHa(need)).effectiveKgPerHa()
                    - new LimeOwed("F", Us.kgPerHa(need))
                            .less(Us.kgPerHa(200), 580 / 2_000.0)
                            .effectiveKgPerHa());

            assertThat(year).isCloseTo(58, within(1e-6));
            assertThat(new PhPath(5.2, 6.2, year / need).after(3).highPh()).isLessThan(5.23);
        }

        @Test
        void theCheaperForTheSameWorkComesFirst() {
            List<LimeOption> options = LimeOption.byCost(
                    List.of(lime("pellets", 1.0, 0.25), lime("ground", 0.5, 0.04)), one, 1_000);

            assertThat(options)
                    .extracting(o -> o.lime().name())
                    .containsExactly("ground", "pellets");
            assertThat(options.get(0).usdPerHa()).isCloseTo(80, within(1e-9));
            assertThat(options.get(1).usdPerHa()).isCloseTo(250, within(1e-9));
        }
    }
}
