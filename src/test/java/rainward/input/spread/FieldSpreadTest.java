package rainward.input.spread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rainward.input.Gap;
import rainward.input.SoilTest;
import rainward.input.Us;
import rainward.input.fertilizer.Blender;
import rainward.input.fertilizer.CropRemoval;
import rainward.input.fertilizer.Product;
import rainward.input.fertilizer.Targets;
import rainward.input.fertilizer.TestRule;
import rainward.input.lime.FinenessSystem;
import rainward.input.lime.LimeNeed;
import rainward.input.lime.LimePlan;
import rainward.input.lime.LimeQuality;
import rainward.input.lime.LimeRule;
import rainward.intake.InputTables;
import rainward.intake.TableFolder;

/** This year's dose and what is owed, from a test and from what was spread since. */
class FieldSpreadTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 7, 13);
    private static final LocalDate AUTUMN = LocalDate.of(2025, 11, 4);
    private static final InputTables TABLES = new InputTables(TableFolder.onClassPath());

    /** Pure and fine, so that what is spread is what works. */
    private static final LimeQuality FINE =
            new LimeQuality("fine lime", 1, 0, Map.of(20, 1.0, 60, 1.0, 100, 1.0), 0.04);

    private static final FinenessSystem NEW_YORK =
            Optional.ofNullable(TABLES.finenessSystems().get("new york")).orElseThrow();

    private static final LimeRule TRI_STATE =
            Optional.ofNullable(TABLES.limeRules().get("tri-state 1995")).orElseThrow();

    private static SpreadRules rules() {
        return rules(Double.POSITIVE_INFINITY);
    }

    private static SpreadRules rules(double limeAtHandKg) {
        TestRule.ByExchange none = new TestRule.ByExchange(
                new TestRule("Bray P1", 15, 15, 10, new TestRule.Feed(Us.kgPerHa(5), 0)), 0, 0);
        return new SpreadRules(
                new SpreadRules.Liming(
                        TRI_STATE,
                        NEW_YORK,
                        List.of(FINE),
                        limeAtHandKg,
                        LimePlan.Cap.USUAL,
                        Us.cm(8)),
                new SpreadRules.Feeding(
                        new Targets.Rules(none, none, Us.kgPerHa(50)),
                        List.of(
                                new Product.Offer(
                                        Product.ofGrade("urea", 46, 0, 0),
                                        0.6,
                                        Double.POSITIVE_INFINITY),
                                new Product.Offer(
                                        Product.ofGrade("triple", 0, 46, 0),
                                        0.8,
                                        Double.POSITIVE_INFINITY)),
                        Blender.Tolerance.EXACT),
                3);
    }

    private static SpreadCase field(double ph, double bufferPh, SpreadCase.Past past) {
        SoilTest test = new SoilTest(
                "Mill 1",
                AUTUMN,
                new SoilTest.Acidity(ph, Optional.of(new SoilTest.Buffer("SMP", bufferPh))),
                new SoilTest.Nutrients(
                        Optional.of(new SoilTest.Extract("Bray P1", 10)),
                        Optional.of(new SoilTest.Extract("Bray P1", 60)),
                        OptionalDouble.of(8)));
        return new SpreadCase(
                new SpreadCase.Plot("Mill 1", 2, 6.5), Optional.of(test), past, TODAY);
    }

    private static SpreadCase.Past spread(LocalDate on, String product, double rateKgPerHa) {
        return new SpreadCase.Past(
                List.of(new SpreadCase.Spreading(on, product, rateKgPerHa)), List.of());
    }

    /** The need itself is held against its publication in LimeReferenceTest. */
    private static double needKgPerHa(double ph, double bufferPh) {
        return TRI_STATE.need(ph, bufferPh, 6.5).effectiveKgPerHa();
    }

    @Test
    void yearGetsItsMostAndTheRestIsOwed() {
        LimeDose dose = FieldSpread.of(field(5.5, 6.4, SpreadCase.Past.NOTHING), rules())
                .lime()
                .orElseThrow();

        double need = needKgPerHa(5.5, 6.4);
        assertThat(dose.nowKgPerHa()).isCloseTo(Us.kgPerHa(4_000), within(1e-6));
        assertThat(dose.nowKgPerHa() + dose.owed().effectiveKgPerHa())
                .isCloseTo(need, within(1e-6));
        assertThat(dose.later().doses().get(0).year()).isEqualTo(2027);
    }

    @Test
    void heapGivesWhatItHasAndTheRestIsOwed() {
        // Two hectares, which without a heap get their 4000 lb/ac.
        LimeDose dose = FieldSpread.of(field(5.5, 6.4, SpreadCase.Past.NOTHING), rules(3_000))
                .lime()
                .orElseThrow();

        assertThat(dose.nowKgPerHa()).isCloseTo(1_500, within(1e-6));
        assertThat(dose.lackingKgPerHa()).isCloseTo(Us.kgPerHa(4_000) - 1_500, within(1e-6));
        assertThat(dose.nowKgPerHa() + dose.owed().effectiveKgPerHa())
                .isCloseTo(needKgPerHa(5.5, 6.4), within(1e-6));
    }

    @Test
    void emptyHeapGivesNothingAndAllIsOwed() {
        LimeDose dose = FieldSpread.of(field(5.5, 6.4, SpreadCase.Past.NOTHING), rules(0))
                .lime()
                .orElseThrow();

        assertThat(dose.nowKgPerHa()).isZero();
        assertThat(dose.lackingKgPerHa()).isCloseTo(Us.kgPerHa(4_000), within(1e-6));
        assertThat(dose.owed().effectiveKgPerHa()).isCloseTo(needKgPerHa(5.5, 6.4), within(1e-6));
    }

    @Test
    void whatWasSpreadSinceTheTestIsRememberedAndTheYearGetsNoMore() {
        LimeDose dose = FieldSpread.of(
                        field(
                                5.5,
                                6.4,
                                spread(TODAY.minusDays(20), "fine lime", Us.kgPerHa(4_000))),
                        rules())
                .lime()
                .orElseThrow();

        assertThat(dose.nowKgPerHa()).isZero();
        assertThat(dose.owed().effectiveKgPerHa())
                .isCloseTo(needKgPerHa(5.5, 6.4) - Us.kgPerHa(4_000), within(1e-6));
    }

    @Test
    void limeSpreadBeforeTheTestIsInTheTestAlready() {
        LimeDose dose = FieldSpread.of(
                        field(5.5, 6.4, spread(AUTUMN.minusDays(1), "fine lime", 4_000)), rules())
                .lime()
                .orElseThrow();

        assertThat(dose.nowKgPerHa() + dose.owed().effectiveKgPerHa())
                .isCloseTo(needKgPerHa(5.5, 6.4), within(1e-6));
    }

    @Test
    void nitrogenOfThisYearIsNotSpreadTwice() {
        FieldSpread again = FieldSpread.of(
                field(6.6, 6.9, spread(TODAY.minusDays(5), "urea", Us.kgPerHa(50 / 0.46))),
                rules());

        assertThat(again.target().nitrogenKgPerHa()).isCloseTo(0, within(1e-6));
        assertThat(again.blend().parts()).noneMatch(p -> p.product().name().equals("urea"));
    }

    @Test
    void withoutATestOnlyHarvestsAreReplacedAndTheGapSaysWhatToMeasure() {
        CropRemoval corn =
                Optional.ofNullable(TABLES.cropRemovals().get("corn grain")).orElseThrow();
        SpreadCase asked = new SpreadCase(
                new SpreadCase.Plot("Mill 1", 2, 6.5),
                Optional.empty(),
                new SpreadCase.Past(
                        List.of(), List.of(new CropRemoval.Harvest(corn, AUTUMN, 8_000))),
                TODAY);

        FieldSpread spread = FieldSpread.of(asked, rules());

        assertThat(spread.lime()).isEmpty();
        assertThat(spread.target().phosphateKgPerHa())
                .isCloseTo(corn.of(8_000).phosphateKgPerHa(), within(1e-9));
        assertThat(spread.gaps()).extracting(Gap::remedy).anyMatch(r -> r.contains("buffer pH"));
    }

    @Test
    void testOfThreeYearsIsSaidToBeOld() {
        SpreadCase fresh = field(6.0, 6.7, SpreadCase.Past.NOTHING);
        SpreadCase old =
                new SpreadCase(fresh.plot(), fresh.test(), fresh.past(), AUTUMN.plusYears(3));

        assertThat(FieldSpread.of(fresh, rules()).gaps())
                .noneMatch(gap -> gap.missing().contains("years old"));
        assertThat(FieldSpread.of(old, rules()).gaps())
                .anyMatch(gap -> gap.missing().contains("3 years old"));
    }

    @Test
    void nothingIsEverNegativeNorPromisedTooSoonNorLost() {
        var luck = new SplittableRandom(20260713);
        for (int i = 0; i < 2_000; i++) {
            double ph = 4.6 + luck.nextDouble(2.4);
            double bufferPh = Math.min(7.2, ph + luck.nextDouble(1.2));
            double spreadKgPerHa = luck.nextDouble(6_000);
            SpreadCase asked =
                    field(ph, bufferPh, spread(TODAY.minusDays(30), "fine lime", spreadKgPerHa));

            FieldSpread spread = FieldSpread.of(asked, rules());

            spread.spreads()
                    .forEach(one -> assertThat(one.rateKgPerHa()).isPositive().isFinite());
            if (spread.lime().isEmpty()) {
                assertThat(needKgPerHa(ph, bufferPh) - spreadKgPerHa).isLessThanOrEqualTo(1);
                continue;
            }
            LimeDose dose = spread.lime().get();
            assertThat(spreadKgPerHa + dose.nowKgPerHa() + dose.owed().effectiveKgPerHa())
                    .isCloseTo(needKgPerHa(ph, bufferPh), within(1e-3));
            assertThat(dose.nowKgPerHa() + spreadKgPerHa)
                    .isLessThanOrEqualTo(Math.max(spreadKgPerHa, Us.kgPerHa(4_000)) + 1e-6);
            if (asked.plot().targetPh() - ph >= 1) {
                assertThat(dose.path().mayReachTargetThisYear()).isFalse();
            }
        }
    }

    @Test
    void needIsStatedForTheDepthThatTheRuleIsWrittenFor() {
        LimeNeed need = TRI_STATE.need(5.5, 6.4, 6.5);

        assertThat(need.standard().depthCm()).isCloseTo(Us.cm(8), within(1e-9));
    }
}
