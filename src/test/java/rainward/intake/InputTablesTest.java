package rainward.intake;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/** The tables that come with the program, and what happens to a broken one. */
class InputTablesTest {
    private static final InputTables SHIPPED = new InputTables(TableFolder.onClassPath());

    private static double lbPerAcre(double kgPerHa) {
        return UnitSystem.US_CUSTOMARY.shown(Quantity.RATE, kgPerHa);
    }

    @Nested
    class Shipped {

        @Test
        void productsHaveTheGradeOfTheirLabel() {
            var dap = requireNonNull(SHIPPED.products().get("diammonium phosphate"));

            assertThat(dap.nitrogenFraction()).isCloseTo(0.18, within(1e-12));
            assertThat(dap.phosphateFraction()).isCloseTo(0.46, within(1e-12));
        }

        /** IPNI Fall 2008 No. 4: 200 bushels of corn grain take 54 lb of K2O. */
        @Test
        void cornTakesThePotashThatIpniGives() {
            var corn = requireNonNull(SHIPPED.cropRemovals().get("corn grain"));
            double yieldKgPerHa = UnitSystem.US_CUSTOMARY.inside(Quantity.RATE, 200 * 56);

            assertThat(lbPerAcre(corn.of(yieldKgPerHa).potashKgPerHa()))
                    .isCloseTo(54, within(1e-9));
        }

        /** Cornell's rule and Iowa's, the latter from memory, on one lime. */
        @Test
        void aLimeIsJudgedByTheSystemOfTheRegion() {
            Map<Integer, Double> passing = Map.of(4, 1.0, 8, 0.95, 20, 0.9, 60, 0.6, 100, 0.4);

            assertThat(fineness("new york", passing)).isCloseTo(0.68, within(1e-12));
            assertThat(fineness("iowa", passing)).isCloseTo(0.745, within(1e-12));
        }

        private double fineness(String system, Map<Integer, Double> passing) {
            return requireNonNull(SHIPPED.finenessSystems().get(system))
                    .finenessFraction(passing)
                    .orElseThrow();
        }

        /** North Carolina's worked example is 0.75 tons; Tri-State's LTI 64 to 6.5 is 4.7. */
        @Test
        void twoRegionsRecommendByTheirOwnRules() {
            var rules = SHIPPED.limeRules();

            assertThat(lbPerAcre(requireNonNull(rules.get("north carolina"))
                                    .need(5.0, 6.3, 6.0)
                                    .rateKgPerHa())
                            / 2_000)
                    .isCloseTo(0.75, within(1e-9));
            assertThat(lbPerAcre(requireNonNull(rules.get("tri-state 1995"))
                                    .need(5.5, 6.4, 6.5)
                                    .rateKgPerHa())
                            / 2_000)
                    .isCloseTo(4.7, within(0.05));
        }

        /** E-2567 as remembered: (15 - 10) x 5 = 25 lb/ac; potash at CEC 8 begins below 95 ppm. */
        @Test
        void soilTestsAreReadByRegionAndCrop() {
            var rules = SHIPPED.testRules();
            var phosphate = requireNonNull(rules.get("tri-state 1995/corn and soybean/phosphate"));
            var potash = requireNonNull(rules.get("tri-state 1995/corn and soybean/potash"));

            assertThat(lbPerAcre(phosphate.at(8).rateKgPerHa(10, 0))).isCloseTo(25, within(1e-9));
            assertThat(potash.at(8).criticalPpm()).isCloseTo(95, within(1e-9));
        }

        /** Michigan State University: 75 to 100 lb an acre for forage brassicas. */
        @Test
        void brassicasAreGivenTheNitrogenOfMichigan() {
            var range = requireNonNull(SHIPPED.nitrogen().get("forage brassica"));

            assertThat(lbPerAcre(range.lowKgPerHa())).isCloseTo(75, within(1e-9));
            assertThat(lbPerAcre(range.highKgPerHa())).isCloseTo(100, within(1e-9));
        }

        @Test
        void everySpeciesHasAWeightByVolume() {
            var species = new SharedTables(TableFolder.onClassPath()).species().keySet();

            assertThat(SHIPPED.bulkDensity().kgPerM3().keySet()).containsAll(species);
        }
    }

    @Nested
    class Broken {
        @TempDir
        Path folder;

        @Test
        void aSieveSystemThatDoesNotAddUpIsToldItsPlace() throws IOException {
            write("lime-fineness.csv", "system,mesh,weight,source\n-,1,1,-\nx,20,0.5,memory\n");

            assertThatThrownBy(() -> mine().finenessSystems())
                    .hasMessageContaining("lime-fineness.csv line 3")
                    .hasMessageContaining("sum of weights is 0.5");
        }

        @Test
        void anUnknownRuleIsToldTheKnownOnes() throws IOException {
            write(
                    "lime-recommendations.csv",
                    "region,rule,target_ph,intercept_tons_per_acre,slope_tons_per_acre,depth_in,"
                            + "effective_pct,source\n-,-,-,-,-,-,-,-\nx,by eye,-,-,-,8,90,memory\n");

            assertThatThrownBy(() -> mine().limeRules())
                    .hasMessageContaining("column rule is 'by eye'")
                    .hasMessageContaining("must be exchange acidity or buffer index");
        }

        @Test
        void aProductTwiceIsNamed() throws IOException {
            write(
                    "products.csv",
                    "product,nitrogen_pct,phosphate_pct,potash_pct,source\n-,%,%,%,-\n"
                            + "urea,46,0,0,practice\nurea,45,0,0,practice\n");

            assertThatThrownBy(() -> mine().products()).hasMessageContaining("line 4: twice: urea");
        }

        @Test
        void aGradeBeyondTheBagIsRefused() throws IOException {
            write(
                    "products.csv",
                    "product,nitrogen_pct,phosphate_pct,potash_pct,source\n-,%,%,%,-\n"
                            + "much,60,60,0,practice\n");

            assertThatThrownBy(() -> mine().products()).hasMessageContaining("much: grade is 1.2");
        }

        private InputTables mine() {
            return new InputTables(TableFolder.at(folder));
        }

        private void write(String file, String text) throws IOException {
            Files.writeString(folder.resolve(file), text);
        }
    }
}
