package rainward.input.seed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.SeedingMethod;
import rainward.input.Mixes;
import rainward.input.seed.Fill.Leg;

/** Fills of the seed boxes along a route. */
class RouteTest {
    /** Two boxes of 100 litres, 2 m each; at 700 kg/m3 they hold 140 kg, 14 kg of it as heel. */
    static final SeedBoxes TWO =
            new SeedBoxes(List.of(new SeedBoxes.Box(2, 100), new SeedBoxes.Box(2, 100)), 0.1);

    private static Leg leg(String field, double areaHa) {
        return new Leg(field, "oats", areaHa, 20, 700);
    }

    @Nested
    class Boxes {

        @Test
        void seedIsSplitByTheWidthThatEachBoxFeedsSoThatAllRunLowTogether() {
            SeedBoxes uneven =
                    new SeedBoxes(List.of(new SeedBoxes.Box(1, 80), new SeedBoxes.Box(3, 120)), 0);

            assertThat(uneven.split(40)).containsExactly(10.0, 30.0);
            // The wide box is full with 120 L while the narrow one stands at 40 L.
            assertThat(uneven.capacityKg(1_000)).isCloseTo(160, within(1e-9));
        }

        @Test
        void aMixWeighsWhatItsVolumesAddUpTo() {
            SeedNeed need = SeedNeed.of(
                    new Sowing(
                            "F",
                            1,
                            Mixes.mix(
                                    "two",
                                    Mixes.part("oats", 35_000, 40),
                                    Mixes.part("turnip", 485_000, 40)),
                            SeedingMethod.DRILLED),
                    Map.of("oats", SeedTag.bare("O", 1, 1), "turnip", SeedTag.bare("T", 1, 1)));

            var both = new BulkDensity(Map.of("oats", 400.0, "turnip", 600.0));
            assertThat(both.of(need).orElseThrow()).isCloseTo(480, within(1e-9));
            assertThat(new BulkDensity(Map.of("oats", 400.0)).of(need)).isEmpty();
        }
    }

    @Nested
    class Stops {

        @Test
        void oneFillServesAllFieldsThatItReaches() {
            List<Fill> fills = Route.fills(TWO, List.of(leg("A", 2), leg("B", 3)));

            assertThat(fills).singleElement().satisfies(fill -> {
                assertThat(fill.field()).isEqualTo("A");
                assertThat(fill.afterHa()).isZero();
                assertThat(fill.addKg()).isCloseTo(40 + 60 + 14, within(1e-9));
                assertThat(fill.perBoxKg()).containsExactly(57.0, 57.0);
            });
        }

        @Test
        void aFieldThatTheLoadDoesNotFinishIsFilledForAtItsGate() {
            List<Fill> fills = Route.fills(TWO, List.of(leg("A", 5), leg("B", 4)));

            assertThat(fills).extracting(Fill::field).containsExactly("A", "B");
            assertThat(fills.get(0).addKg()).isCloseTo(140, within(1e-9));
            // 40 kg are in the boxes at the gate of B; it takes 80 and the heel of 14.
            assertThat(fills.get(1).addKg()).isCloseTo(54, within(1e-9));
            assertThat(fills.get(0).staysKg()).isCloseTo(14, within(1e-9));
            assertThat(fills.get(1).staysKg()).as("in there already").isZero();
        }

        @Test
        void aFieldLargerThanALoadIsFilledForInsideWhereTheLoadEnds() {
            List<Fill> fills = Route.fills(TWO, List.of(leg("A", 10)));

            assertThat(fills).hasSize(2);
            assertThat(fills.get(1).afterHa()).isCloseTo(126 / 20.0, within(1e-9));
            assertThat(fills.get(1).addKg()).isCloseTo(200 - 126, within(1e-9));
        }

        @Test
        void anotherMixMeansTheBoxesAreEmptiedFirst() {
            List<Fill> fills =
                    Route.fills(TWO, List.of(leg("A", 1), new Leg("B", "turnip", 1, 3, 650)));

            assertThat(fills).extracting(Fill::emptied).containsExactly(false, true);
            assertThat(fills.get(0).addKg()).isCloseTo(20 + 14, within(1e-9));
            assertThat(fills.get(1).addKg()).isCloseTo(3 + 13, within(1e-9));
            assertThat(fills.get(1).staysKg())
                    .as("the boxes were emptied")
                    .isCloseTo(13, within(1e-9));
        }

        @Test
        void noFieldsMeanNoFills() {
            assertThat(Route.fills(TWO, List.of())).isEmpty();
        }

        @Test
        void aRateThatIsNoNumberIsRefused() {
            assertThatThrownBy(() -> new Leg("A", "oats", 1, Double.NaN, 700))
                    .hasMessageContaining("rateKgPerHa");
        }
    }

    @Nested
    class Laws {

        /** Walks the fields with the given fills and watches the boxes. */
        @Test
        void boxesNeverOverflowNorStarveAndEveryFieldIsSown() {
            var luck = new SplittableRandom(20260708);
            for (int run = 0; run < 500; run++) {
                List<Leg> legs = randomLegs(luck);
                List<Fill> fills = new ArrayList<>(Route.fills(TWO, legs));
                double inBoxKg = 0;
                String mix = "";
                for (Leg leg : legs) {
                    inBoxKg = mix.equals(leg.mix()) ? inBoxKg : 0;
                    mix = leg.mix();
                    double doneHa = 0;
                    while (!fills.isEmpty() && fills.get(0).field().equals(leg.field())) {
                        Fill fill = fills.remove(0);
                        inBoxKg -= (fill.afterHa() - doneHa) * leg.rateKgPerHa();
                        doneHa = fill.afterHa();
                        assertThat(inBoxKg).isGreaterThan(-1e-6);
                        inBoxKg += fill.addKg();
                        assertThat(fill.addKg()).isPositive();
                        assertThat(inBoxKg).isLessThan(TWO.capacityKg(700) + 1e-6);
                    }
                    inBoxKg -= (leg.areaHa() - doneHa) * leg.rateKgPerHa();
                    assertThat(inBoxKg).isGreaterThan(TWO.heelKg(700) - 1e-6);
                }
                assertThat(fills).isEmpty();
                assertThat(inBoxKg).isCloseTo(TWO.heelKg(700), within(1e-6));
            }
        }

        private List<Leg> randomLegs(SplittableRandom luck) {
            List<Leg> legs = new ArrayList<>();
            for (int i = 0; i < 1 + luck.nextInt(12); i++) {
                String mix = luck.nextInt(4) == 0 ? "clover" : "oats";
                legs.add(new Leg("F" + i, mix, luck.nextDouble(0.2, 12), 20, 700));
            }
            return legs;
        }
    }
}
