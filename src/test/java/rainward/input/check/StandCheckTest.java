package rainward.input.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.input.Mixes;
import rainward.input.Us;

/** Did it come up? Counts, verdicts, and what is left to sow. */
class StandCheckTest {
    static final double FT2_PER_M2 = 1 / (0.3048 * 0.3048);
    static final LocalDate SOWN = LocalDate.of(2026, 7, 14);

    @Nested
    class SeedsOnTheGround {

        /** WVU (Rayburn 1994): seeds a square foot for a pound an acre, printed 6, 16 and 28. */
        @ParameterizedTest(name = "{0}: {2}")
        @CsvSource({
            "red clover,   275000,  6, 6.3",
            "white clover, 700000, 16, 16.07",
            "timothy,     1230000, 28, 28.2"
        })
        void aPoundAnAcreOfWestVirginia(String crop, double perLb, double printed, double exact) {
            double perFt2 = SownSeed.drilledPerM2(Mixes.part(crop, perLb / Us.kg(1), Us.kgPerHa(1)))
                    / FT2_PER_M2;

            assertThat(perFt2).isCloseTo(exact, within(0.05)).isCloseTo(printed, within(0.5));
        }

        /** smallgrains.org (Minnesota 1997): a wheat stand is 1.2 to 1.5 million plants an acre. */
        @Test
        void aRingOfWheatCountsMillionsAnAcre() {
            PlantCount ring = PlantCount.inRing(Us.m(2), List.of(94, 94, 94));
            double perAcre = ring.plantsPerM2() / FT2_PER_M2 * 43_560;

            // 94 plants in 3.1416 square feet are 29.9 a square foot.
            assertThat(perAcre).isCloseTo(1.303e6, within(1e3)).isBetween(1.2e6, 1.5e6);
        }
    }

    @Nested
    class Counts {

        /** Geometry: a ring of 28.26 inches holds a ten-thousandth of an acre. */
        @Test
        void aRingOf28InchesIsATenThousandthOfAnAcre() {
            double perAcre = PlantCount.inRing(Us.m(28.26 / 12), List.of(1)).plantsPerM2()
                    / FT2_PER_M2
                    * 43_560;

            assertThat(perAcre).isCloseTo(10_000, within(5.0));
        }

        /** Geometry: 17 feet 5 inches of a 30-inch row are a thousandth of an acre. */
        @Test
        void seventeenFeetOfAWideRowAreAThousandth() {
            PlantCount row = PlantCount.alongRow(Us.m(17 + 5.0 / 12), Us.m(2.5), List.of(30, 28));

            assertThat(row.plantsPerM2() / FT2_PER_M2 * 43_560).isCloseTo(29_000, within(20.0));
        }

        @Test
        void theErrorIsThatOfTheMean() {
            PlantCount two = new PlantCount(1, List.of(10, 14));

            assertThat(two.plantsPerM2()).isCloseTo(12, within(1e-9));
            assertThat(two.errorPerM2()).isCloseTo(2, within(1e-9));
            assertThat(new PlantCount(1, List.of(10)).errorPerM2()).isCloseTo(10, within(1e-9));
        }

        @Test
        void noPlaceIsNoCount() {
            assertThatThrownBy(() -> new PlantCount(1, List.of()))
                    .hasMessageContaining("one place at least");
        }
    }

    @Nested
    class Stands {
        /** 100 seeds of turnip and 300 of clover a square metre; the turnip counts three times. */
        private final Mix mix = new Mix(
                "two",
                List.of(
                        new MixComponent(Mixes.species("turnip", 500_000), 2, 3, 0.75),
                        new MixComponent(Mixes.species("clover", 500_000), 6, 9, 0.25)),
                1.3,
                0.4,
                Mixes.mix("x", Mixes.part("y", 1, 1)).season());

        @Test
        void componentsCountByTheirWeight() {
            assertThat(SownSeed.stand(mix, Map.of("turnip", 40.0, "clover", 120.0)))
                    .isCloseTo(0.4, within(1e-9));
            assertThat(SownSeed.stand(mix, Map.of("clover", 300.0))).isCloseTo(0.25, within(1e-9));
        }

        @Test
        void seedlingsThatAreNotToldApartCountAlike() {
            assertThat(SownSeed.standOfAll(mix, 160)).isCloseTo(0.4, within(1e-9));
            assertThat(StandVerdict.targetShare(mix, 0.4)).isCloseTo(1, within(1e-9));
        }

        @Test
        void threeVerdictsPartTheShareOfTheTarget() {
            assertThat(StandVerdict.of(0.75)).isEqualTo(StandVerdict.UP);
            assertThat(StandVerdict.of(0.74)).isEqualTo(StandVerdict.THIN);
            assertThat(StandVerdict.of(0.34)).isEqualTo(StandVerdict.THIN);
            assertThat(StandVerdict.of(0.33)).isEqualTo(StandVerdict.FAILED);
        }

        @Test
        void aCountNearTheLineAsksForMorePlaces() {
            assertThat(StandVerdict.isClose(0.36, 0.05)).isTrue();
            assertThat(StandVerdict.isClose(0.55, 0.05)).isFalse();
            assertThat(StandVerdict.isClose(0.0, 0.1)).isFalse();
        }
    }

    @Nested
    class DueDays {
        private static final LocalDate SEASON_END = SOWN.plusDays(40);

        private final Optional<CheckDay.Emergence> week =
                Optional.of(new CheckDay.Emergence(3.2, 5, 7.4));

        @Test
        void theCheckIsDueAtTheLateEndOfTheRange() {
            CheckDay day = new CheckDay(SOWN, CheckDay.Seed.GROWING, week, SEASON_END);

            assertThat(day.isDue(SOWN.plusDays(7))).isFalse();
            assertThat(day.isDue(SOWN.plusDays(8))).isTrue();
            assertThat(day.reason()).isEqualTo(CheckDay.Reason.SHOULD_SHOW);
        }

        @Test
        void drySeedIsNotLookedAtBeforeItsSeasonIsOver() {
            CheckDay day = new CheckDay(SOWN, CheckDay.Seed.DRY, week, SEASON_END);

            assertThat(day.isDue(SEASON_END.minusDays(1))).isFalse();
            assertThat(day.isDue(SEASON_END)).isTrue();
            assertThat(day.reason()).isEqualTo(CheckDay.Reason.TIME_IS_OVER);
        }

        @Test
        void lostSeedIsLookedAtToday() {
            CheckDay day = new CheckDay(SOWN, CheckDay.Seed.LOST, Optional.empty(), SEASON_END);

            assertThat(day.isDue(SOWN.plusDays(2))).isTrue();
            assertThat(day.reason()).isEqualTo(CheckDay.Reason.TAKEN_FOR_LOST);
        }

        @Test
        void seedThatComesTooLateIsLookedAtWhenItsSeasonIsOver() {
            CheckDay day = new CheckDay(SOWN, CheckDay.Seed.GROWING, week, SOWN.plusDays(6));

            assertThat(day.isDue(SOWN.plusDays(6))).isTrue();
            assertThat(day.reason()).isEqualTo(CheckDay.Reason.TIME_IS_OVER);
            assertThat(new CheckDay(SOWN, CheckDay.Seed.DRY, week, SOWN.minusDays(3)).due(SOWN))
                    .as("sown after its season")
                    .isEqualTo(SOWN);
        }
    }

    @Nested
    class Options {
        private final LocalDate today = LocalDate.of(2026, 8, 1);

        private NextMix mix(String name, double worth, int day, boolean late) {
            return new NextMix(
                    name, worth, LocalDate.of(2026, 7, 1), LocalDate.of(2026, 8, day), late);
        }

        @Test
        void theBestInSeasonComesFirstAndTheLateMixLast() {
            List<NextMix> ranked = NextMix.ranked(
                    List.of(
                            mix("rye and oats", 0.6, 31, true),
                            mix("three brassicas", 0.3, 15, false),
                            mix("turnip and rape", 0.5, 15, false),
                            NextMix.keep(0.4, 1)),
                    today);

            assertThat(ranked)
                    .extracting(NextMix::mix)
                    .containsExactly(
                            "turnip and rape", NextMix.KEEP, "three brassicas", "rye and oats");
        }

        @Test
        void whatIsOutOfSeasonOrWorthlessIsNotOffered() {
            List<NextMix> all = new ArrayList<>();
            all.add(new NextMix("early", 0.9, SOWN, today.minusDays(1), false));
            all.add(mix("last day", 0.2, 1, false));
            all.add(mix("hopeless", 0, 15, false));

            assertThat(NextMix.ranked(all, today))
                    .extracting(NextMix::mix)
                    .containsExactly("last day");
        }
    }

    @Nested
    class Laws {

        @Test
        void morePlantsNeverMakeAWorseVerdict() {
            var luck = new SplittableRandom(20260718);
            for (int i = 0; i < 2_000; i++) {
                double share = luck.nextDouble(1.5);
                assertThat(StandVerdict.of(share + luck.nextDouble(0.5)))
                        .isLessThanOrEqualTo(StandVerdict.of(share));
            }
        }
    }
}
