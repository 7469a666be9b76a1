package rainward.input.fertilizer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.input.Us;
import rainward.input.fertilizer.Blender.Tolerance;
import rainward.input.fertilizer.Product.Offer;

/** Blends against worked examples of calculators and county sheets, then against laws. */
class BlendReferenceTest {
    static final Product UREA = Product.ofGrade("urea", 46, 0, 0);
    static final Product TRIPLE = Product.ofGrade("triple superphosphate", 0, 46, 0);
    static final Product DAP = Product.ofGrade("DAP", 18, 46, 0);
    static final Product MAP = Product.ofGrade("MAP", 11, 52, 0);
    static final Product POTASH = Product.ofGrade("potash", 0, 0, 60);

    static Offer offer(Product product, double usdPerKg) {
        return new Offer(product, usdPerKg, Double.POSITIVE_INFINITY);
    }

    static Nutrients pounds(double n, double p2o5, double k2o) {
        return new Nutrients(Us.kgPerHa(n), Us.kgPerHa(p2o5), Us.kgPerHa(k2o));
    }

    static Blend exact(Nutrients target, Offer... offers) {
        return new Blender(List.of(offers), 1).blend(target, Tolerance.EXACT);
    }

    static double lbPerAcre(Blend blend, Product product) {
        return blend.parts().stream()
                .filter(part -> part.product().equals(product))
                .mapToDouble(part -> Us.lbPerAcre(part.rateKgPerHa()))
                .sum();
    }

    @Nested
    class PublishedExamples {

        /** Worked here from lb product = lb nutrient / fraction; grade 16.6-16.6-16.6. */
        @Test
        void sixtySixtySixtyFromThreeStraightProducts() {
            Blend blend = exact(
                    pounds(60, 60, 60), offer(UREA, 0.6), offer(TRIPLE, 0.7), offer(POTASH, 0.5));

            assertThat(lbPerAcre(blend, UREA)).isCloseTo(130.43, within(0.005));
            assertThat(lbPerAcre(blend, TRIPLE)).isCloseTo(130.43, within(0.005));
            assertThat(lbPerAcre(blend, POTASH)).isCloseTo(100.00, within(0.005));
            assertThat(Us.lbPerAcre(blend.rateKgPerHa())).isCloseTo(360.87, within(0.005));
            assertThat(60 / Us.lbPerAcre(blend.rateKgPerHa())).isCloseTo(0.166, within(0.0005));
            assertThat(blend.misses()).isEmpty();
        }

        @Test
        void sixtySixtySixtyFromDapLeavesLessUrea() {
            Blend blend = exact(
                    pounds(60, 60, 60), offer(UREA, 0.6), offer(DAP, 0.7), offer(POTASH, 0.5));

            assertThat(lbPerAcre(blend, DAP)).isCloseTo(130.43, within(0.005));
            assertThat(lbPerAcre(blend, UREA)).isCloseTo(79.40, within(0.005));
            assertThat(lbPerAcre(blend, POTASH)).isCloseTo(100.00, within(0.005));
        }

        /** A general calculator page prints 130, 340 and 133. */
        @Test
        void aCalculatorPagePrints130And340And133() {
            Blend blend = exact(
                    pounds(180, 60, 80), offer(UREA, 0.6), offer(DAP, 0.7), offer(POTASH, 0.5));

            assertThat(lbPerAcre(blend, DAP)).isCloseTo(130, within(0.5));
            assertThat(lbPerAcre(blend, UREA)).isCloseTo(340, within(0.5));
            assertThat(lbPerAcre(blend, POTASH)).isCloseTo(133, within(0.5));
        }

        @Test
        void twentyOfNitrogenAndPotashAre77Pounds() {
            Blend blend = exact(pounds(20, 0, 20), offer(UREA, 0.6), offer(POTASH, 0.5));

            assertThat(lbPerAcre(blend, UREA)).isCloseTo(43.48, within(0.005));
            assertThat(lbPerAcre(blend, POTASH)).isCloseTo(33.33, within(0.005));
            assertThat(Us.lbPerAcre(blend.rateKgPerHa())).isCloseTo(76.81, within(0.005));
        }

        /** An Arkansas county sheet: 3 lb of N from 6-6-18 are 50 lb. */
        @Test
        void threePoundsOfNitrogenFromALowGradeAre50Pounds() {
            Blend blend = new Blender(List.of(offer(Product.ofGrade("6-6-18", 6, 6, 18), 1)), 1)
                    .blend(pounds(3, 3, 9), Tolerance.EXACT);

            assertThat(Us.lbPerAcre(blend.rateKgPerHa())).isCloseTo(50, within(1e-6));
        }

        /** A course sheet prints 71 lb; exact are 71.43. */
        @Test
        void fifteenPoundsOfNitrogenFromAmmoniumSulfateAre71() {
            Blend blend = exact(
                    pounds(15, 0, 0), offer(Product.ofGrade("ammonium sulfate", 21, 0, 0), 1));

            assertThat(Us.lbPerAcre(blend.rateKgPerHa())).isCloseTo(71.43, within(0.005));
        }

        /** Ohio State ANR-74 (2019): about 110 lb are 210 lb MAP, 240 lb DAP, 180 lb potash. */
        @Test
        void hundredTenPoundsInThreeProductsOfOhio() {
            assertThat(pure(MAP, 0.52, 110))
                    .isCloseTo(211.5, within(0.05))
                    .isCloseTo(210, within(5.0));
            assertThat(pure(DAP, 0.46, 110))
                    .isCloseTo(239.1, within(0.05))
                    .isCloseTo(240, within(5.0));
            assertThat(pure(POTASH, 0.60, 110))
                    .isCloseTo(183.3, within(0.05))
                    .isCloseTo(180, within(5.0));
        }

        private double pure(Product product, double share, double nutrient) {
            double lb = nutrient / share;
            Nutrients target = pounds(
                    lb * product.nitrogenFraction(),
                    lb * product.phosphateFraction(),
                    lb * product.potashFraction());
            return Us.lbPerAcre(exact(target, offer(product, 1)).rateKgPerHa());
        }

        /** P2O5 / 2.29 and K2O / 1.205 are from memory; an Arkansas sheet prints 2.3 and 1.12. */
        @Test
        void oxidesAndElementsAgreeWithTheWeightsOfTheAtoms() {
            double p = 30.973_762;
            double o = 15.999;
            double k = 39.0983;
            Nutrients oxides = new Nutrients(0, 100, 100);

            assertThat(oxides.phosphorusKgPerHa())
                    .isCloseTo(100 * 2 * p / (2 * p + 5 * o), within(0.05));
            assertThat(oxides.potassiumKgPerHa())
                    .isCloseTo(100 * 2 * k / (2 * k + o), within(0.05));
            assertThat(Nutrients.ofElements(
                                    0, oxides.phosphorusKgPerHa(), oxides.potassiumKgPerHa())
                            .potashKgPerHa())
                    .isCloseTo(100, within(1e-9));
        }
    }

    @Nested
    class Choices {

        @Test
        void theCheaperSourceOfPhosphateIsTaken() {
            Blend dap =
                    exact(pounds(60, 60, 0), offer(UREA, 0.6), offer(DAP, 0.6), offer(TRIPLE, 0.7));
            Blend triple =
                    exact(pounds(60, 60, 0), offer(UREA, 0.6), offer(DAP, 1.4), offer(TRIPLE, 0.7));

            assertThat(lbPerAcre(dap, TRIPLE)).isZero();
            assertThat(lbPerAcre(triple, DAP)).isZero();
        }

        @Test
        void toleranceIsUsedWhereItSavesMoney() {
            Blend blend = new Blender(List.of(offer(UREA, 1)), 1)
                    .blend(new Nutrients(100, 0, 0), new Tolerance(0.1, 0.1));

            assertThat(blend.brings().nitrogenKgPerHa()).isCloseTo(90, within(1e-6));
            assertThat(blend.misses()).isEmpty();
        }

        @Test
        void whatIsOnHandIsAllThatIsSpread() {
            Blend blend = new Blender(List.of(new Offer(UREA, 1, 100)), 2)
                    .blend(new Nutrients(46, 0, 0), Tolerance.EXACT);

            assertThat(blend.rateKgPerHa()).isCloseTo(50, within(1e-6));
            assertThat(blend.misses()).containsExactly("N is 50% short of its target");
        }

        @Test
        void phosphateWithoutNitrogenIsNotToBeHadFromDapAndThatIsSaid() {
            Blend blend = exact(new Nutrients(0, 46, 0), offer(DAP, 0.7));

            assertThat(lbPerAcre(blend, DAP)).isPositive();
            assertThat(blend.misses()).containsExactly("N comes along and is not wanted");
        }

        @Test
        void noProductsMeanNoBlendAndAllIsMissing() {
            Blend blend = new Blender(List.of(), 1).blend(new Nutrients(10, 0, 5), Tolerance.EXACT);

            assertThat(blend.parts()).isEmpty();
            assertThat(blend.misses()).hasSize(2);
        }

        @Test
        void withoutPricesTheLightestBlendIsTaken() {
            Product weak = Product.ofGrade("21-0-0", 21, 0, 0);

            assertThat(exact(pounds(46, 0, 0), offer(weak, 0), offer(UREA, 0)).rateKgPerHa())
                    .isCloseTo(Us.kgPerHa(100), within(1e-6));
        }
    }

    @Nested
    class Loads {

        @Test
        void aFieldIsSpreadInEvenLoads() {
            Blend blend = exact(new Nutrients(46, 0, 60), offer(UREA, 1), offer(POTASH, 1));

            List<Blend.Load> loads = blend.loads(4, 300);

            assertThat(loads).hasSize(3).allSatisfy(load -> {
                assertThat(load.massKg()).isCloseTo(800.0 / 3, within(1e-6));
                assertThat(load.areaHa()).isCloseTo(4.0 / 3, within(1e-9));
            });
            assertThat(blend.amounts(4))
                    .extracting(Blend.Amount::product)
                    .containsExactly("urea", "potash");
        }

        @Test
        void nothingToSpreadIsNoLoad() {
            assertThat(exact(Nutrients.NONE, offer(UREA, 1)).loads(4, 300)).isEmpty();
        }
    }

    @Nested
    class Laws {

        /** A cheaper blend that meets the band would be found by trying; none is. */
        @Test
        void noBlendOfTheSameProductsIsCheaperAndWithinTheBand() {
            var luck = new SplittableRandom(20260715);
            Tolerance band = new Tolerance(0.05, 0.10);
            for (int i = 0; i < 100; i++) {
                Nutrients target = new Nutrients(
                        luck.nextDouble(40, 150),
                        luck.nextDouble(20, 80),
                        luck.nextDouble(20, 120));
                List<Offer> offers = prices(luck);
                Blend best = new Blender(offers, 1).blend(target, band);

                assertThat(best.misses()).isEmpty();
                for (int other = 0; other < 200; other++) {
                    assertThat(cost(offers, blendWithin(target, luck)))
                            .isGreaterThan(best.usdPerHa() - 1e-6);
                }
            }
        }

        /** Rates of urea, DAP, MAP, triple and potash that bring 95 to 110 % of each target. */
        private double[] blendWithin(Nutrients target, SplittableRandom luck) {
            while (true) {
                double phosphate = target.phosphateKgPerHa() * luck.nextDouble(0.95, 1.10);
                double nitrogen = target.nitrogenKgPerHa() * luck.nextDouble(0.95, 1.10);
                double potash = target.potashKgPerHa() * luck.nextDouble(0.95, 1.10);
                double dapShare = luck.nextDouble() * luck.nextInt(2);
                double mapShare = luck.nextDouble(1 - dapShare + 1e-9) * luck.nextInt(2);
                double dap = phosphate * dapShare / 0.46;
                double map = phosphate * mapShare / 0.52;
                double triple = phosphate * Math.max(0, 1 - dapShare - mapShare) / 0.46;
                double urea = (nitrogen - 0.18 * dap - 0.11 * map) / 0.46;
                if (urea >= 0) {
                    return new double[] {urea, dap, map, triple, potash / 0.6};
                }
            }
        }

        @Test
        void ratesAndCostsAreNeverNegativeWhateverIsAskedAndOffered() {
            var luck = new SplittableRandom(20260716);
            for (int i = 0; i < 500; i++) {
                Nutrients target = new Nutrients(
                        luck.nextDouble(200) * luck.nextInt(2),
                        luck.nextDouble(100) * luck.nextInt(2),
                        luck.nextDouble(150) * luck.nextInt(2));
                List<Offer> offers = new ArrayList<>(prices(luck));
                offers.removeIf(offer -> luck.nextInt(3) == 0);
                offers.replaceAll(o -> new Offer(o.product(), o.usdPerKg(), luck.nextDouble(600)));

                Blend blend = new Blender(offers, luck.nextDouble(0.5, 5))
                        .blend(target, new Tolerance(luck.nextDouble(0.2), luck.nextDouble(0.2)));

                assertThat(blend.usdPerHa()).isNotNegative().isFinite();
                assertThat(blend.parts())
                        .allSatisfy(part ->
                                assertThat(part.rateKgPerHa()).isPositive().isFinite());
            }
        }

        private List<Offer> prices(SplittableRandom luck) {
            return List.of(
                    offer(UREA, luck.nextDouble(0.3, 1.2)),
                    offer(DAP, luck.nextDouble(0.3, 1.2)),
                    offer(MAP, luck.nextDouble(0.3, 1.2)),
                    offer(TRIPLE, luck.nextDouble(0.3, 1.2)),
                    offer(POTASH, luck.nextDouble(0.3, 1.2)));
        }

        private double cost(List<Offer> offers, double[] rates) {
            double cost = 0;
            for (int p = 0; p < rates.length; p++) {
                cost += rates[p] * offers.get(p).usdPerKg();
            }
            return cost;
        }
    }
}
