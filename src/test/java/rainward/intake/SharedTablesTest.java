package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.Mix;
import rainward.farm.Species;

class SharedTablesTest {
    private static final SharedTables SHIPPED = Shipped.TABLES;

    @Test
    void theTablesThatComeWithTheProgramAreWhole() {
        assertThat(SHIPPED.species()).hasSizeGreaterThanOrEqualTo(10).containsKey("turnip");
        for (String region : SHIPPED.regions()) {
            assertThat(SHIPPED.mixes(region)).hasSizeGreaterThanOrEqualTo(5);
        }
    }

    @Test
    void aMixCarriesItsSpeciesRatesAndTheSeasonOfTheRegion() {
        Mix mix = Shipped.mix("three brassicas");
        assertThat(mix.components()).hasSize(3);
        assertThat(mix.components().get(0).species().name()).isEqualTo("turnip");
        assertThat(mix.season().lastSowing()).isEqualTo(MonthDay.of(8, 15));
        assertThat(mix.components().stream().mapToDouble(c -> c.standWeight()).sum())
                .isCloseTo(1, within(1e-9));
    }

    /** Seed deeper than a species can rise from would never make a stand. */
    @Test
    void noMixIsSownDeeperThanItsSpeciesCanRise() {
        for (Mix mix : SHIPPED.mixes("southern michigan").values()) {
            for (var component : mix.components()) {
                assertThat(mix.sowingDepthCm())
                        .as(mix.name() + ": " + component.species().name())
                        .isLessThanOrEqualTo(component.species().emergence().greatestDepthCm());
            }
        }
    }

    /** Seeds per pound: Rayburn 1994, West Virginia University. */
    @ParameterizedTest
    @CsvSource({"red clover, 275000", "white clover, 700000"})
    void cloverSeedCountsAreThePublishedOnes(String species, double perPound) {
        double perKg = Shipped.species(species).seedsPerKg();
        assertThat(perKg * 0.45359237).isCloseTo(perPound, within(perPound * 0.01));
    }

    /** Seeds per square foot at 1 lb/ac, printed as 6 and 16: Rayburn 1994. */
    @ParameterizedTest
    @CsvSource({"red clover, 6", "white clover, 16"})
    void aPoundAnAcreIsThePrintedNumberOfSeedsAFoot(String name, long printed) {
        Species species = Shipped.species(name);
        double perSquareMetre = 0.45359237 / 4046.8564224 * species.seedsPerKg();
        assertThat(Math.round(perSquareMetre * 0.09290304)).isEqualTo(printed);
    }

    @Nested
    class Faults {
        @TempDir
        Path folder;

        @Test
        void aWordInPlaceOfANumberIsNamedWithItsPlace() throws IOException {
            swap("species.csv", "turnip,1.4,", "turnip,warm,");
            assertThatThrownBy(() -> mine().species())
                    .isInstanceOf(BadTableException.class)
                    .hasMessageEndingWith(
                            "species.csv line 4, column base_temp_c is 'warm', must be a number");
        }

        @Test
        void aValueThatCannotBeIsNamedWithItsRange() throws IOException {
            swap("species.csv", "turnip,1.4,", "turnip,44,");
            assertThatThrownBy(() -> mine().species())
                    .hasMessageContaining("species.csv line 4")
                    .hasMessageContaining("baseTempC is 44.0, must be -10.0 to 20.0");
        }

        @Test
        void anUnknownSpeciesIsNamedWithTheKnownOnes() throws IOException {
            swap("mix-components.csv", "turnip and rape,rape", "turnip and rape,rap");
            assertThatThrownBy(() -> mine().mixes("northern ohio"))
                    .hasMessageContaining("mix-components.csv line 4, column species is 'rap'")
                    .hasMessageContaining("rape, turnip, kale");
        }

        @Test
        void aComponentOfNoMixIsNotPassedOver() throws IOException {
            swap("mix-components.csv", "turnip and rape,rape", "turnip and rap,rape");
            assertThatThrownBy(() -> mine().mixes("northern ohio"))
                    .hasMessageContaining("line 4, column mix is 'turnip and rap'");
        }

        @Test
        void anUnknownRegionIsToldTheKnownOnes() throws IOException {
            swap("species.csv", "turnip", "turnip");
            assertThatThrownBy(() -> mine().mixes("atlantis"))
                    .hasMessageContaining("'atlantis'")
                    .hasMessageContaining("southern michigan");
        }

        @Test
        void aLostColumnAndALostFileAreNamed() throws IOException {
            swap("seasons.csv", "last_sowing", "last_sown");
            assertThatThrownBy(() -> mine().regions())
                    .hasMessageContaining("seasons.csv line 1: column last_sowing is missing");
            Files.delete(folder.resolve("seasons.csv"));
            assertThatThrownBy(() -> mine().regions()).hasMessageContaining("is missing");
        }

        @Test
        void aDateThatIsNoneIsToldTheForm() throws IOException {
            swap("seasons.csv", "southern michigan,07-05", "southern michigan,July 5");
            assertThatThrownBy(() -> mine().mixes("southern michigan"))
                    .hasMessageContaining("column first_sowing is 'July 5'")
                    .hasMessageContaining("for instance 07-31");
        }

        private SharedTables mine() {
            return new SharedTables(TableFolder.at(folder));
        }

        private void swap(String file, String from, String to) throws IOException {
            for (String name :
                    List.of("species.csv", "mixes.csv", "mix-components.csv", "seasons.csv")) {
                Files.copy(Path.of("shared", name), folder.resolve(name));
            }
            Path path = folder.resolve(file);
            String text = Files.readString(path);
            assertThat(text).contains(from);
            Files.writeString(path, text.replaceFirst(from, to));
        }
    }
}
