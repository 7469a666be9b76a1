package rainward.intake;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TextureClassesTest {

    private static final TextureClasses CLASSES = TextureClasses.of(TableFolder.onClassPath());

    /**
     * Class limits of the USDA Soil Survey Manual, chapter 3, in percent of sand, silt and clay.
     */
    @ParameterizedTest
    @CsvSource({
        "sand, 85, 100, 0, 15, 0, 10",
        "loamy sand, 70, 91, 0, 30, 0, 15",
        "sandy loam, 43, 85, 0, 50, 0, 20",
        "loam, 23, 52, 28, 50, 7, 27",
        "silt loam, 0, 50, 50, 88, 0, 27",
        "silt, 0, 20, 80, 100, 0, 12",
        "sandy clay loam, 45, 80, 0, 28, 20, 35",
        "clay loam, 20, 45, 15, 53, 27, 40",
        "silty clay loam, 0, 20, 40, 73, 27, 40",
        "sandy clay, 45, 65, 0, 20, 35, 55",
        "silty clay, 0, 20, 40, 60, 40, 60",
        "clay, 0, 45, 0, 40, 40, 100",
    })
    void middleOfAClassLiesInsideIt(
            String name,
            int sandLow,
            int sandHigh,
            int siltLow,
            int siltHigh,
            int clayLow,
            int clayHigh) {
        TextureClasses.Minerals middle = requireNonNull(CLASSES.byName().get(name));
        double sandPct = middle.sandFraction() * 100;
        double clayPct = middle.clayFraction() * 100;

        assertThat(sandPct).isBetween((double) sandLow, (double) sandHigh);
        assertThat(clayPct).isBetween((double) clayLow, (double) clayHigh);
        assertThat(100 - sandPct - clayPct).isBetween((double) siltLow, (double) siltHigh);
    }

    @Test
    void everyClassOfTheTriangleIsThere() {
        assertThat(CLASSES.byName()).hasSize(12);
    }
}
