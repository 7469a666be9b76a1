package rainward.input.seeder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.input.Us;
import rainward.input.seeder.BoxCheck.Target;
import rainward.input.seeder.BoxCheck.Verdict;

/** A look into the boxes, worked by hand in whole numbers. */
class BoxCheckTest {
    /** 10 kg/ha at setting 20; 6 ha to go, 20 kg in bags. */
    static final Target TEN = new Target(10, 20, 6, 20);

    @Nested
    class WorkedCases {

        @Test
        void aThirdTooMuchClosesTheSetting() {
            BoxCheck check = new BoxCheck(TEN, 80, 3, 41, 0.5);

            assertThat(check.expectedLeftKg()).isCloseTo(50, within(1e-9));
            assertThat(check.trueRateKgPerHa()).isCloseTo(13, within(1e-9));
            assertThat(check.verdict()).isEqualTo(Verdict.HEAVY);
            assertThat(check.correctedSetting()).isCloseTo(200 / 13.0, within(1e-9));
        }

        @Test
        void theSeedFinishesAtTheTargetAndNotAsSet() {
            BoxCheck check = new BoxCheck(TEN, 80, 3, 41, 0.5);

            assertThat(check.shortAtTargetKg()).isZero();
            assertThat(check.shortAsSetKg()).isCloseTo(78 - 61, within(1e-9));
        }

        @Test
        void tooLittleOpensIt() {
            BoxCheck check = new BoxCheck(TEN, 80, 4, 48, 0.5);

            assertThat(check.verdict()).isEqualTo(Verdict.LIGHT);
            assertThat(check.correctedSetting()).isCloseTo(25, within(1e-9));
        }

        @Test
        void withinFivePerCentNothingIsTouched() {
            BoxCheck check = new BoxCheck(TEN, 80, 4, 39, 0.5);

            assertThat(check.verdict()).isEqualTo(Verdict.RIGHT);
            assertThat(check.correctedSetting()).isEqualTo(20);
        }

        @Test
        void afterAFewStepsTheReadingTellsNothing() {
            BoxCheck check = new BoxCheck(TEN, 80, 0.1, 78.7, 1);

            assertThat(check.rateErrorKgPerHa()).isCloseTo(10, within(1e-9));
            assertThat(check.verdict()).isEqualTo(Verdict.TOO_EARLY);
            assertThat(check.correctedSetting()).isEqualTo(20);
        }

        @Test
        void fullBoxesAfterHectaresAreAFault() {
            assertThat(new BoxCheck(TEN, 80, 2, 80, 0.5).verdict())
                    .isEqualTo(Verdict.NOTHING_COMES);
        }

        @Test
        void moreSeedThanWasPutInIsAMisreading() {
            assertThatThrownBy(() -> new BoxCheck(TEN, 80, 2, 81, 0.5))
                    .hasMessageContaining("81.0 kg")
                    .hasMessageContaining("read again");
        }
    }

    @Nested
    class Laws {

        @Test
        void theCorrectedSettingOfAProportionalSeederMeetsTheTarget() {
            var luck = new SplittableRandom(20260710);
            for (int i = 0; i < 2_000; i++) {
                double kgPerHaPerMark = luck.nextDouble(0.05, 4);
                double target = luck.nextDouble(2, 150);
                double setting = luck.nextDouble(0.3, 3) * target / kgPerHaPerMark;
                double sownHa = luck.nextDouble(0.5, 5);
                double outKg = kgPerHaPerMark * setting * sownHa;

                BoxCheck check =
                        new BoxCheck(new Target(target, setting, 5, 0), outKg + 10, sownHa, 10, 0);

                double corrected = check.correctedSetting() * kgPerHaPerMark;
                assertThat(corrected / target).isBetween(0.95 - 1e-9, 1.05 + 1e-9);
                assertThat(check.shortAtTargetKg()).isNotNegative().isFinite();
            }
        }

        @Test
        void acresAndPoundsTellTheSameAsHectaresAndKilograms() {
            // 100 lb filled, 4 acres at 8 lb/ac meant, 60 lb left: 10 lb/ac went out.
            BoxCheck check = new BoxCheck(
                    new Target(Us.kgPerHa(8), 20, Us.ha(10), Us.kg(50)),
                    Us.kg(100),
                    Us.ha(4),
                    Us.kg(60),
                    Us.kg(1));

            assertThat(Us.lb(check.expectedLeftKg())).isCloseTo(68, within(1e-9));
            assertThat(Us.lbPerAcre(check.trueRateKgPerHa())).isCloseTo(10, within(1e-9));
            assertThat(check.correctedSetting()).isCloseTo(16, within(1e-9));
            assertThat(check.shortAsSetKg()).isZero();
        }
    }
}
