package rainward.input.seed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.Mix;
import rainward.farm.SeedingMethod;
import rainward.input.Mixes;
import rainward.input.Us;

/** Seed that a field takes, by component. */
class SeedNeedTest {
    static final Mix GRASS_AND_CLOVER = Mixes.mix(
            "ryegrass and clover",
            Mixes.part("annual ryegrass", 500_000, Us.kgPerHa(10)),
            Mixes.part("crimson clover", 330_000, Us.kgPerHa(10)));
    static final Map<String, SeedTag> TAGS = Map.of(
            "annual ryegrass", SeedTag.bare("R", 0.88, 1),
            "crimson clover", SeedTag.bare("C", 0.80, 1));

    @Nested
    class WorkedCases {

        /** The mix of a Southeast Farm Press article on 3.2 acres; the sums were worked here. */
        @Test
        void tenAndTenPoundsOnThreeAcresComeOutOfTwoLots() {
            SeedNeed need = SeedNeed.of(
                    new Sowing("Home 3", Us.ha(3.2), GRASS_AND_CLOVER, SeedingMethod.DRILLED),
                    TAGS);

            assertThat(Us.lb(need.parts().get(0).bulkKg().orElseThrow()))
                    .isCloseTo(36.36, within(0.005));
            assertThat(Us.lb(need.parts().get(1).bulkKg().orElseThrow()))
                    .isCloseTo(40.00, within(0.005));
            assertThat(Us.lb(need.bulkKg().orElseThrow())).isCloseTo(76.36, within(0.005));
            assertThat(need.boxShares().get(1)).isCloseTo(0.524, within(0.0005));
            assertThat(Us.lb(need.liveKg())).isCloseTo(64, within(1e-9));
        }

        @Test
        void broadcastingTakesItsOwnRateAndRollingTheDrilledOne() {
            assertThat(live(SeedingMethod.BROADCAST))
                    .isCloseTo(1.5 * live(SeedingMethod.DRILLED), within(1e-9));
            assertThat(live(SeedingMethod.ROLLED))
                    .isCloseTo(live(SeedingMethod.DRILLED), within(1e-9));
        }

        private double live(SeedingMethod method) {
            return SeedNeed.of(new Sowing("F", 2, GRASS_AND_CLOVER, method), TAGS)
                    .liveKg();
        }
    }

    @Nested
    class WithoutATag {
        private final SeedNeed need = SeedNeed.of(
                new Sowing("Home 3", 1, GRASS_AND_CLOVER, SeedingMethod.DRILLED),
                Map.of("crimson clover", SeedTag.bare("C", 0.80, 1)));

        @Test
        void theWeightIsLeftOpenAndTheGapSaysWhatToRead() {
            assertThat(need.bulkKg()).isEmpty();
            assertThat(need.bulkRateKgPerHa()).isEmpty();
            assertThat(need.boxShares()).isEmpty();
            assertThat(need.gaps())
                    .singleElement()
                    .satisfies(gap -> assertThat(gap.text())
                            .contains("annual ryegrass")
                            .contains("no seed tag")
                            .contains("purity, germination and coating"));
        }

        @Test
        void theLiveSeedAndTheOtherComponentStand() {
            assertThat(Us.lbPerAcre(need.liveKg())).isCloseTo(20, within(1e-9));
            assertThat(need.parts().get(1).bulkKg()).isPresent();
        }
    }

    @Nested
    class Laws {

        /** The same field written in acres and pounds or in hectares and kilograms. */
        @Test
        void bothUnitSystemsGiveTheSameAmount() {
            var luck = new SplittableRandom(20260706);
            for (int i = 0; i < 1_000; i++) {
                double acres = luck.nextDouble(0.1, 12);
                double lbPerAcre = luck.nextDouble(1, 120);
                SeedTag tag = SeedTag.bare("T", luck.nextDouble(0.2, 1), luck.nextDouble(0.2, 1));

                double viaUs = bulkKg(Us.ha(acres), Us.kgPerHa(lbPerAcre), tag);
                double viaMetric =
                        bulkKg(acres * 0.404_685_642_24, lbPerAcre * 1.120_851_156_2, tag);
                double pounds = acres * lbPerAcre / tag.pureLiveFraction();

                assertThat(viaUs).isPositive().isFinite();
                assertThat(viaUs / viaMetric).isCloseTo(1, within(1e-9));
                assertThat(Us.lb(viaUs) / pounds).isCloseTo(1, within(1e-12));
            }
        }

        private double bulkKg(double areaHa, double kgPerHa, SeedTag tag) {
            Mix mix = Mixes.mix("one", Mixes.part("oats", 35_000, kgPerHa));
            return SeedNeed.of(
                            new Sowing("F", areaHa, mix, SeedingMethod.DRILLED),
                            Map.of("oats", tag))
                    .bulkKg()
                    .orElseThrow();
        }
    }
}
