package rainward.soil.property;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.SoilTexture;

class MatrixConductivityTest {

    /** K0 over Ks in cm/d, class averages of Schaap and others 2001, from memory. */
    @ParameterizedTest
    @CsvSource({
        "0.88, 0.05, 24.5, 642.7",
        "0.40, 0.20, 3.70, 12.05",
        "0.20, 0.15, 1.75, 18.24",
        "0.10, 0.05, 3.34, 43.75"
    })
    void atSaturationItIsTheMatchingPointOfTheClass(
            double sand, double clay, double matchCmPerD, double saturatedCmPerD) {
        SoilTexture texture = new SoilTexture(sand, clay, 2.5);
        double printed = matchCmPerD / saturatedCmPerD;
        assertThat(MatrixConductivity.share(texture, 1)).isCloseTo(printed, within(0.01 * printed));
    }

    @Test
    void nothingIsAddedToTheCurveOfSaxtonAndRawls() {
        for (double sand = 0; sand <= 0.9; sand += 0.1) {
            for (double clay = 0.02; sand + clay <= 1; clay += 0.07) {
                for (double wetness = 0.1; wetness <= 1; wetness += 0.1) {
                    assertThat(MatrixConductivity.share(new SoilTexture(sand, clay, 2.5), wetness))
                            .isBetween(0.01, 1.0);
                }
            }
        }
    }

    /** The law that makes silt the odd one out: much flow in few pores, little in the rest. */
    @Test
    void siltLoamLosesMostAndLoamHardlyAnything() {
        assertThat(MatrixConductivity.share(new SoilTexture(0.2, 0.15, 2.5), 0.4))
                .isLessThan(0.2);
        assertThat(MatrixConductivity.share(new SoilTexture(0.4, 0.2, 2.5), 0.4))
                .isGreaterThan(0.9);
    }
}
