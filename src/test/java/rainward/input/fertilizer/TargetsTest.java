package rainward.input.fertilizer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.input.SoilTest;
import rainward.input.Us;
import rainward.input.fertilizer.CropRemoval.Harvest;

/** Targets from soil tests and from harvests. */
class TargetsTest {
    // Bushels of corn and soybean weigh 56 and 60 lb (US legal weights).
    static final CropRemoval CORN_GRAIN = new CropRemoval("corn grain", 0.35 / 56, 0.27 / 56);
    /** Tri-State 1995 for corn: critical level 15 ppm Bray P1, plateau 15, drawdown 10; memory. */
    static final TestRule PHOSPHATE =
            new TestRule("Bray P1", 15, 15, 10, new TestRule.Feed(Us.kgPerHa(5), 0));

    /** The same for potash: 75 + 2.5 CEC, plateau 30, drawdown 20, 20 lb beside; from memory. */
    static final TestRule.ByExchange POTASH = new TestRule.ByExchange(
            new TestRule(
                    "ammonium acetate",
                    75,
                    30,
                    20,
                    new TestRule.Feed(Us.kgPerHa(1), Us.kgPerHa(20))),
            2.5,
            Us.kgPerHa(0.05));

    static final Targets.Rules RULES =
            new Targets.Rules(new TestRule.ByExchange(PHOSPHATE, 0, 0), POTASH, 60);

    static double bushels(double perAcre, double lbPerBushel) {
        return Us.kgPerHa(perAcre * lbPerBushel);
    }

    static SoilTest test(Optional<SoilTest.Extract> phosphorus, OptionalDouble exchange) {
        return new SoilTest(
                "Home 3",
                LocalDate.of(2023, 8, 1),
                new SoilTest.Acidity(6.4, Optional.empty()),
                new SoilTest.Nutrients(
                        phosphorus,
                        Optional.of(new SoilTest.Extract("ammonium acetate", 85)),
                        exchange));
    }

    static Optional<SoilTest.Extract> extract(String method, double ppm) {
        return Optional.of(new SoilTest.Extract(method, ppm));
    }

    @Nested
    class Removal {

        /** IPNI Fall 2008 No. 4: 0.27 lb K2O a bushel of corn grain, 200 bu take 54 lb. */
        @Test
        void twoHundredBushelsOfCornTake54PoundsOfPotash() {
            assertThat(Us.lbPerAcre(CORN_GRAIN.of(bushels(200, 56)).potashKgPerHa()))
                    .isCloseTo(54, within(1e-9));
        }

        /** The same: stover holds 1.1 lb a grain bushel; half of that of 200 bu is 110 lb. */
        @Test
        void halfTheStoverOf200BushelsTakes110Pounds() {
            CropRemoval stover = new CropRemoval("corn stover, by grain", 0, 1.1 / 56);

            assertThat(Us.lbPerAcre(stover.of(bushels(200, 56)).potashKgPerHa()) / 2)
                    .isCloseTo(110, within(1e-9));
        }

        /** Ohio State ANR-74: corn 180 and soybean 60 bu; soybean figures are from memory. */
        @Test
        void cornAndSoybeanTogetherTake100To120PoundsOfEach() {
            CropRemoval soybean = new CropRemoval("soybean", 0.8 / 60, 1.4 / 60);
            Nutrients both = CORN_GRAIN.of(bushels(180, 56)).plus(soybean.of(bushels(60, 60)));

            assertThat(Us.lbPerAcre(both.phosphateKgPerHa())).isBetween(100.0, 120.0);
            // Potash comes out beyond the printed range: 0.27 lb a bushel is the newer figure.
            assertThat(Us.lbPerAcre(both.potashKgPerHa())).isBetween(120.0, 135.0);
        }

        @Test
        void onlyHarvestsAfterTheTestCount() {
            Nutrients since = CropRemoval.since(
                    LocalDate.of(2024, 5, 1),
                    List.of(
                            new Harvest(CORN_GRAIN, LocalDate.of(2023, 10, 20), 9_000),
                            new Harvest(CORN_GRAIN, LocalDate.of(2024, 10, 20), 5_600)));

            assertThat(since.phosphateKgPerHa()).isCloseTo(35, within(1e-9));
            assertThat(Targets.replacing(since, 60).wanted().nitrogenKgPerHa()).isEqualTo(60);
        }
    }

    @Nested
    class SoilTests {

        /** E-2567 form: (15 - 10) x 5 + 150 bu x 0.37 = 80.5 lb/ac; from memory. */
        @Test
        void belowTheCriticalLevelTheSoilIsBuiltUp() {
            assertThat(Us.lbPerAcre(PHOSPHATE.rateKgPerHa(10, Us.kgPerHa(150 * 0.37))))
                    .isCloseTo(80.5, within(1e-9));
        }

        @Test
        void onThePlateauTheCropsShareIsReplacedAndAboveItFallsToNothing() {
            assertThat(PHOSPHATE.rateKgPerHa(15, 50)).isCloseTo(50, within(1e-9));
            assertThat(PHOSPHATE.rateKgPerHa(30, 50)).isCloseTo(50, within(1e-9));
            assertThat(PHOSPHATE.rateKgPerHa(35, 50)).isCloseTo(25, within(1e-9));
            assertThat(PHOSPHATE.rateKgPerHa(90, 50)).isZero();
        }

        /** E-2567 form: (95 - 85)(1 + 0.05 x 8) + 40 + 20 = 74 lb/ac; from memory. */
        @Test
        void potashAsksMoreOfASoilThatHoldsMore() {
            Targets targets = Targets.of(
                    test(extract("bray p1", 20), OptionalDouble.of(8)),
                    RULES,
                    new Nutrients(0, 50, Us.kgPerHa(40)));

            assertThat(Us.lbPerAcre(targets.wanted().potashKgPerHa())).isCloseTo(74, within(1e-9));
            assertThat(targets.wanted().phosphateKgPerHa()).isCloseTo(50, within(1e-9));
            assertThat(targets.gaps()).isEmpty();
        }

        @Test
        void aNutrientExtractedByAnotherMethodIsAGapAndNoGuess() {
            Targets targets = Targets.of(
                    test(extract("Mehlich-3", 20), OptionalDouble.of(8)),
                    RULES,
                    new Nutrients(0, 50, 40));

            assertThat(targets.wanted().phosphateKgPerHa()).isZero();
            assertThat(targets.gaps())
                    .singleElement()
                    .satisfies(gap -> assertThat(gap.text())
                            .contains("phosphorus was extracted by Mehlich-3")
                            .contains("Bray P1"));
        }

        @Test
        void whatWasNotMeasuredIsAskedFor() {
            Targets targets = Targets.of(
                    test(Optional.empty(), OptionalDouble.empty()), RULES, Nutrients.NONE);

            assertThat(targets.wanted()).isEqualTo(new Nutrients(60, 0, 0));
            assertThat(targets.gaps().get(0).text()).contains("no phosphorus");
            assertThat(targets.gaps().get(1).text()).contains("CEC");
        }

        @Test
        void aTestOfThreeYearsIsOldOnItsDay() {
            SoilTest test = test(Optional.empty(), OptionalDouble.empty());

            assertThat(test.ageGap(LocalDate.of(2026, 7, 31), SoilTest.USUAL_YEARS))
                    .isEmpty();
            assertThat(test.ageGap(LocalDate.of(2026, 8, 1), SoilTest.USUAL_YEARS)
                            .orElseThrow()
                            .text())
                    .contains("2023-08-01")
                    .contains("3 years old or more");
        }
    }

    @Nested
    class Laws {

        @Test
        void aRicherSoilNeverTakesMore() {
            var luck = new SplittableRandom(20260717);
            for (int i = 0; i < 2_000; i++) {
                TestRule rule = new TestRule(
                        "m",
                        luck.nextDouble(5, 200),
                        luck.nextDouble(50),
                        luck.nextDouble(1, 50),
                        new TestRule.Feed(luck.nextDouble(10), luck.nextDouble(30)));
                double ppm = luck.nextDouble(300);
                double removal = luck.nextDouble(100);

                double rate = rule.rateKgPerHa(ppm, removal);
                assertThat(rate).isNotNegative().isFinite();
                assertThat(rule.rateKgPerHa(ppm + luck.nextDouble(50), removal))
                        .isLessThanOrEqualTo(rate + 1e-9);
            }
        }
    }
}
