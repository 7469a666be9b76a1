package rainward.input.lime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.input.Us;

/** Doses of lime over the years, what stays owed, and the pH as a range. */
class LimePlanTest {

    @Nested
    class Doses {

        /** MU Extension: two tons at a time. */
        @Test
        void fiveTonsAreTwoTwoAndOne() {
            LimePlan plan = LimePlan.of(
                    new LimeOwed("Home 3", Us.kgPerHa(5 * 2_000 * 0.9)),
                    0.9,
                    LimePlan.Cap.USUAL,
                    2026);

            assertThat(plan.doses())
                    .extracting(LimePlan.Dose::year)
                    .containsExactly(2026, 2027, 2028);
            assertThat(plan.doses())
                    .extracting(dose -> Us.lbPerAcre(dose.rateKgPerHa()) / 2_000)
                    .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : 1)
                    .containsExactly(2.0, 2.0, 1.0);
            assertThat(plan.firstShare()).isCloseTo(0.4, within(1e-9));
        }

        @Test
        void whereLimeIsNotWorkedInTheRestWaits() {
            LimePlan plan =
                    LimePlan.of(new LimeOwed("F", 8_000), 1, new LimePlan.Cap(4_483, 3), 2026);

            assertThat(plan.doses()).extracting(LimePlan.Dose::year).containsExactly(2026, 2029);
        }

        @Test
        void nothingOwedIsNoDose() {
            LimePlan plan = LimePlan.of(new LimeOwed("F", 0), 0.7, LimePlan.Cap.USUAL, 2026);

            assertThat(plan.doses()).isEmpty();
            assertThat(plan.firstKgPerHa()).isZero();
            assertThat(plan.firstShare()).isZero();
        }

        @Test
        void whatIsOwedIsRememberedWhenNextYearsLimeIsAnother() {
            LimeOwed owed = new LimeOwed("F", 6_000);
            LimePlan first = LimePlan.of(owed, 0.6, LimePlan.Cap.USUAL, 2026);

            LimeOwed left = owed.less(first.firstKgPerHa(), 0.6);

            assertThat(left.effectiveKgPerHa())
                    .isCloseTo(first.owedAfterFirst().effectiveKgPerHa(), within(1e-6));
            assertThat(LimePlan.of(left, 0.95, LimePlan.Cap.USUAL, 2027).firstKgPerHa())
                    .isCloseTo(left.effectiveKgPerHa() / 0.95, within(1e-6));
        }

        @Test
        void aCapOfNothingIsRefused() {
            assertThatThrownBy(() -> new LimePlan.Cap(0, 1)).hasMessageContaining("mostKgPerHa");
        }
    }

    @Nested
    class Promises {

        @Test
        void aFieldAPointLowIsNeverPromisedTheTargetThisYear() {
            var luck = new SplittableRandom(20260711);
            for (int i = 0; i < 2_000; i++) {
                double start = luck.nextDouble(4, 6);
                double target = start + luck.nextDouble(1, 2.5);
                PhPath path = new PhPath(start, target, luck.nextDouble(0, 1.0000001));

                assertThat(path.mayReachTargetThisYear()).isFalse();
                assertThat(path.after(1).highPh()).isLessThan(target - 0.3);
                assertThat(path.words()).contains("not this year");
            }
        }

        @Test
        void theRangeRisesWithTheYearsAndNeverPassesTheTarget() {
            var luck = new SplittableRandom(20260712);
            for (int i = 0; i < 1_000; i++) {
                double start = luck.nextDouble(4.5, 7);
                PhPath path = new PhPath(start, start + luck.nextDouble(2), luck.nextDouble());
                for (int year = 1; year <= 5; year++) {
                    PhPath.Range range = path.after(year);
                    assertThat(range.lowPh()).isBetween(start, range.highPh());
                    assertThat(range.highPh()).isLessThanOrEqualTo(path.targetPh() + 1e-9);
                    assertThat(path.after(year + 1).lowPh()).isGreaterThanOrEqualTo(range.lowPh());
                }
            }
        }

        @Test
        void theWordsGiveARange() {
            assertThat(new PhPath(5.2, 6.2, 0.4).words())
                    .isEqualTo("pH 5.2 now, 5.3 to 5.4 likely after a year; 6.2 not this year");
        }

        @Test
        void aFieldAtItsTargetStaysThere() {
            assertThat(new PhPath(6.5, 6.5, 0).words())
                    .isEqualTo("pH 6.5 now, 6.5 to 6.5 likely after a year");
        }
    }

    @Nested
    class Laws {

        /** For both regions, any soil and any lime. */
        @Test
        void ratesAreNeverNegativeAndDosesAddUpToTheNeed() {
            var luck = new SplittableRandom(20260713);
            for (int i = 0; i < 3_000; i++) {
                LimeRule rule = luck.nextBoolean()
                        ? LimeReferenceTest.CAROLINA
                        : LimeReferenceTest.TRI_STATE;
                double ph = luck.nextDouble(3.5, 9);
                LimeNeed need = rule.need(ph, luck.nextDouble(4.5, 8), luck.nextDouble(5, 7.5));
                double effective = luck.nextDouble(0.2, 1.5);

                LimePlan plan = LimePlan.of(
                        new LimeOwed("F", need.effectiveKgPerHa()),
                        effective,
                        LimePlan.Cap.USUAL,
                        2026);

                assertThat(need.rateKgPerHa()).isNotNegative().isFinite();
                double spread = plan.doses().stream()
                        .mapToDouble(LimePlan.Dose::rateKgPerHa)
                        .sum();
                assertThat(spread * effective).isCloseTo(need.effectiveKgPerHa(), within(1e-3));
                assertThat(plan.doses())
                        .allSatisfy(dose -> assertThat(dose.rateKgPerHa())
                                .isBetween(0.0, LimePlan.Cap.USUAL.mostKgPerHa() + 1e-9));
            }
        }

        @Test
        void aSourerSoilNeverNeedsLess() {
            var luck = new SplittableRandom(20260714);
            for (int i = 0; i < 1_000; i++) {
                double ph = luck.nextDouble(4, 6);
                double buffer = luck.nextDouble(5.5, 6.9);
                double less = LimeReferenceTest.CAROLINA.need(ph, buffer, 6.5).rateKgPerHa();
                double lessToo =
                        LimeReferenceTest.TRI_STATE.need(ph, buffer, 6.5).rateKgPerHa();

                assertThat(LimeReferenceTest.CAROLINA
                                .need(ph, buffer - 0.1, 6.5)
                                .rateKgPerHa())
                        .isGreaterThanOrEqualTo(less);
                assertThat(LimeReferenceTest.TRI_STATE
                                .need(ph, buffer - 0.1, 6.5)
                                .rateKgPerHa())
                        .isGreaterThanOrEqualTo(lessToo);
            }
        }
    }
}
