package rainward.input.seeder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.input.Us;
import rainward.input.seeder.CatchTest.Outlets;

/** Catch tests against worked examples of bulletins and farm papers. */
class CatchReferenceTest {

    @Nested
    class Distances {

        /** {@code 43,560 / (n x width)} with the acre of 43,560 square feet. */
        @ParameterizedTest(name = "{0} ft, {1} acre: {2} ft")
        @CsvSource({
            " 5, 1/10,  871.2",
            " 5, 1/20, 435.6",
            " 5, 1/40, 217.8",
            " 5, 1/50, 174.2",
            " 5, 1/100, 87.1",
            " 6, 1/10,  726.0",
            " 6, 1/40, 181.5",
            " 8, 1/20, 272.2",
            " 8, 1/50, 108.9",
            "10, 1/10,  435.6",
            "10, 1/40, 108.9",
            "10, 1/100, 43.6",
            "12, 1/20, 181.5",
            "12, 1/50,  72.6",
            "15, 1/10, 290.4",
            "15, 1/20, 145.2",
            "15, 1/40,  72.6",
            "15, 1/50,  58.1",
            "15, 1/100, 29.0",
            " 6, 1/20,  363.0",
            " 6, 1/50, 145.2",
            " 6, 1/100, 72.6",
            " 8, 1/10, 544.5",
            " 8, 1/40,  136.1",
            " 8, 1/100, 54.5",
            "10, 1/20, 217.8",
            "10, 1/50,  87.1",
            "12, 1/10,  363.0",
            "12, 1/40,  90.8",
            "12, 1/100, 36.3"
        })
        void areThoseOfTheTable(double widthFt, String fraction, double distanceFt) {
            CatchStrip strip = AcreFraction.parse(fraction).strip(Us.m(widthFt));

            assertEquals(distanceFt, Us.ft(strip.distanceM()), 0.051);
        }

        /** Southeast Farm Press: 24 openers at 7.5 inches, 1/20 acre, 19 turns of the wheel. */
        @Test
        void theDrillOfTheFarmPaperGoes145FeetIn19Turns() {
            CatchStrip strip = AcreFraction.parse("1/20").strip(Us.m(24 * 7.5 / 12));

            assertThat(Us.ft(strip.widthM())).isCloseTo(15.0, within(1e-9));
            assertThat(Us.ft(strip.distanceM())).isCloseTo(145.2, within(1e-6));
            // The paper's wheel is not given; 19 turns are a wheel of 7.64 feet around.
            assertThat(strip.turns(Us.m(145.2 / 19))).isCloseTo(19, within(1e-6));
        }

        /** University of Maryland (Morris 2019): turns in 100 ft = 100 / (3.14 x diameter). */
        @Test
        void turnsOfMarylandFollowTheDiameter() {
            CatchStrip hundredFeet = new CatchStrip(3, Us.m(100));

            assertThat(hundredFeet.turns(CatchStrip.circumferenceM(Us.m(2.5))))
                    .isCloseTo(100 / (3.14 * 2.5), within(0.01));
        }
    }

    @Nested
    class Rates {

        /** Carter, soilhealthlabs.com: 8 ft wheel, 0.625 ft row, 20 turns, 25 lb/ac, 26.06 g. */
        @Test
        void oneRowOfCarterGives26Grams() {
            CatchStrip row = CatchStrip.ofTurns(Us.m(0.625), 20, Us.m(8));

            assertThat(row.expectedKg(Us.kgPerHa(25)) * 1_000).isCloseTo(26.06, within(0.03));
            assertThat(Us.lbPerAcre(new CatchTest(row, Outlets.ALL, 0.02603).rateKgPerHa()))
                    .isCloseTo(25, within(0.05));
        }

        /** University of Kentucky in a no-till farm paper: grams a row in 150 ft per lb/ac. */
        @ParameterizedTest(name = "{0} in: {1} g per lb/ac")
        @CsvSource({"6, 0.78, 0.7810", "7, 0.91, 0.9111", "7.5, 0.98, 0.9762", "8, 1.04, 1.0413"})
        void gramsOfARowInKentucky(double rowInch, double printed, double exact) {
            double grams =
                    new CatchStrip(Us.m(rowInch / 12), Us.m(150)).expectedKg(Us.kgPerHa(1)) * 1_000;

            assertThat(grams).isCloseTo(printed, within(0.005)).isCloseTo(exact, within(2e-4));
        }

        @Test
        void someOutletsStandForAll() {
            CatchStrip strip = new CatchStrip(4, 50);
            CatchTest four = new CatchTest(strip, new Outlets(4, 24), 0.4);

            assertThat(four.rateKgPerHa()).isCloseTo(120, within(1e-9));
            assertThat(four.factorTo(90)).isCloseTo(0.75, within(1e-12));
        }

        @Test
        void anEmptyPanIsAPluggedOutletAndNoRate() {
            CatchTest none = new CatchTest(new CatchStrip(4, 50), Outlets.ALL, 0);

            assertThat(none.rateKgPerHa()).isZero();
            assertThatThrownBy(() -> none.factorTo(20)).hasMessageContaining("plugged");
        }
    }

    @Nested
    class Faults {

        @Test
        void aFractionThatIsNoneIsToldTheForm() {
            assertThatThrownBy(() -> AcreFraction.parse("0.05"))
                    .hasMessage("fraction of an acre is '0.05', must be 1 over a whole number:"
                            + " 1/20");
        }

        @Test
        void moreOutletsThanTheSeederHasAreRefused() {
            assertThatThrownBy(() -> new Outlets(25, 24))
                    .hasMessageContaining("outlets caught is 25")
                    .hasMessageContaining("24");
        }

        @Test
        void aWidthOfZeroIsRefused() {
            assertThatThrownBy(() -> AcreFraction.parse("1/20").strip(0))
                    .hasMessageContaining("widthM is 0.0");
        }
    }

    @Nested
    class Laws {

        @Test
        void theWeightThatShouldBeCaughtGivesTheRateBackInBothUnitSystems() {
            var luck = new SplittableRandom(20260709);
            for (int i = 0; i < 2_000; i++) {
                double widthFt = luck.nextDouble(1, 40);
                double distanceFt = luck.nextDouble(10, 900);
                double lbPerAcre = luck.nextDouble(0.5, 150);
                CatchStrip strip = new CatchStrip(Us.m(widthFt), Us.m(distanceFt));
                double pounds = lbPerAcre * widthFt * distanceFt / 43_560;

                double caughtKg = strip.expectedKg(Us.kgPerHa(lbPerAcre));
                CatchTest test = new CatchTest(strip, Outlets.ALL, caughtKg);

                assertThat(Us.lb(caughtKg) / pounds).isCloseTo(1, within(1e-9));
                assertThat(Us.lbPerAcre(test.rateKgPerHa())).isCloseTo(lbPerAcre, within(1e-9));
                assertThat(test.factorTo(test.rateKgPerHa())).isCloseTo(1, within(1e-9));
            }
        }
    }
}
