package rainward.input.seed;

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
import rainward.input.seed.SeedTag.Coating;
import rainward.input.seed.SeedTag.Germination;

/** Pure live seed against the worked examples of extension pages and seed houses. */
class SeedTagReferenceTest {

    @Nested
    class PublishedExamples {

        @ParameterizedTest(name = "{5}")
        @CsvSource({
            // purity, germination, printed share, printed bulk a pound, tolerance of the print
            "0.96, 0.80, 0.768,  1.30, 0.005,  Ernst Conservation Seeds",
            "0.85, 0.75, 0.64,   1.56, 0.01,   Texas DOT (exact 0.6375 and 1.5686)",
            "0.92, 0.80, 0.74,   1.4,  0.05,   Penn State turf (exact 73.6 %)",
            "0.85, 0.60, 0.51,   2.0,  0.05,   Penn State turf lot A",
            "0.99, 0.90, 0.89,   1.1,  0.05,   Penn State turf lot B"
        })
        void bulkOfOnePoundOfLiveSeed(
                double purity,
                double germination,
                double liveShare,
                double bulkLb,
                double tolerance,
                String source) {
            SeedTag tag = SeedTag.bare("A1", purity, germination);

            assertEquals(liveShare, tag.pureLiveFraction(), 0.005, source);
            assertEquals(bulkLb, Us.lb(tag.bulkKg(Us.kg(1))), tolerance, source);
        }

        @Test
        void hardSeedCountsAsAliveInEc3() {
            SeedTag tag = new SeedTag("EC3", 0.98, new Germination(0.92, 0.05), Coating.NONE);

            assertThat(tag.pureLiveFraction()).isCloseTo(0.9506, within(1e-12));
            assertThat(Us.lb(tag.bulkKg(Us.kg(3)))).isCloseTo(3.16, within(0.005));
        }

        @Test
        void smallAmountsOfEc3ComeOut() {
            SeedTag tag = SeedTag.bare("EC3", 0.95, 0.85);

            assertThat(tag.pureLiveFraction()).isCloseTo(0.8075, within(1e-12));
            assertThat(Us.lb(tag.bulkKg(Us.kg(0.12)))).isCloseTo(0.15, within(0.002));
        }

        @Test
        void ninetyByNinetyIsEightyOneInGeorgia() {
            assertThat(SeedTag.bare("UGA", 0.9, 0.9).pureLiveFraction())
                    .isCloseTo(0.81, within(1e-12));
        }
    }

    /** The rule that a coat is taken off once is from memory. */
    @Nested
    class CoatedSeed {

        @Test
        void aCoatThatPurityLeavesOutAlreadyIsNotTakenOffTwice() {
            SeedTag ofBag = new SeedTag("C", 0.49, new Germination(0.9, 0), new Coating(0.5, true));
            SeedTag ofSeed =
                    new SeedTag("C", 0.98, new Germination(0.9, 0), new Coating(0.5, false));

            assertThat(ofBag.pureLiveFraction()).isCloseTo(0.441, within(1e-12));
            assertThat(ofSeed.pureLiveFraction())
                    .isCloseTo(ofBag.pureLiveFraction(), within(1e-12));
        }

        @Test
        void purityAndCoatBeyondTheWholeBagAreRefused() {
            assertThatThrownBy(() ->
                            new SeedTag("C", 0.98, new Germination(0.9, 0), new Coating(0.5, true)))
                    .hasMessageContaining("lot C")
                    .hasMessageContaining("without the coat");
        }
    }

    @Nested
    class Laws {

        @Test
        void noBagHoldsMoreLiveSeedThanItWeighs() {
            var luck = new SplittableRandom(20260705);
            for (int i = 0; i < 2_000; i++) {
                double soon = luck.nextDouble(0.01, 1);
                boolean inPurity = luck.nextBoolean();
                double coat = luck.nextDouble(0.95);
                double purity = inPurity
                        ? luck.nextDouble(0.01, Math.max(0.011, 1 - coat))
                        : luck.nextDouble(0.01, 1);
                SeedTag tag = new SeedTag(
                        "L",
                        purity,
                        new Germination(soon, luck.nextDouble() * (1 - soon)),
                        new Coating(coat, inPurity));

                assertThat(tag.bulkKg(5)).isFinite().isGreaterThanOrEqualTo(5);
            }
        }

        @Test
        void numbersThatAreNoneAreRefused() {
            assertThatThrownBy(() -> SeedTag.bare("L", Double.NaN, 0.9))
                    .hasMessageContaining("purityFraction");
            assertThatThrownBy(() -> SeedTag.bare("L", 0.9, 0)).hasMessageContaining("germination");
        }
    }
}
