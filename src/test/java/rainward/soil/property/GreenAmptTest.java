package rainward.soil.property;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.farm.SoilTexture;
import rainward.soil.ReferenceRows;
import rainward.soil.Soils;

/** Green and Ampt with the parameters of Rawls, Brakensiek and Miller 1983. */
class GreenAmptTest {

    private static final ReferenceRows TABLE = ReferenceRows.of("green_ampt_rawls1983.csv");
    private static final ReferenceRows TEXTURES = ReferenceRows.of("saxton_rawls2006.csv");

    static IntStream classes() {
        return TABLE.indices();
    }

    private static GreenAmpt published(String texture) {
        int row = classes()
                .filter(r -> TABLE.text(r, "texture").equals(texture))
                .findFirst()
                .orElseThrow();
        return new GreenAmpt(
                10 * TABLE.number(row, "conductivity_cm_per_h"),
                10 * TABLE.number(row, "suction_cm"));
    }

    @Nested
    class WorkedCases {

        /** A public spreadsheet; silty clay of effective saturation 0.45. */
        @ParameterizedTest(name = "{0} h")
        @CsvSource({"0.1, 2.64, 13.37144", "0.2, 3.754, 9.55379"})
        void pondedSiltyClay(double hours, double goneInMm, double capacityMmPerH) {
            GreenAmpt siltyClay = published("silty clay");
            double f = siltyClay.pondedMm(hours, 0.23265);
            assertThat(f).isCloseTo(goneInMm, within(0.005));
            assertThat(siltyClay.capacityMmPerH(f, 0.23265))
                    .isCloseTo(capacityMmPerH, within(2e-4));
        }

        /**
         * Chow, Maidment and Mays 1988, examples 4.3.1, 4.4.1 and 4.4.3 (printed values from
         * memory).
         */
        @Test
        void siltLoamPondedAndRainedOn() {
            GreenAmpt siltLoam = published("silt loam");
            double ponded = siltLoam.pondedMm(1, 0.3402);
            assertThat(ponded).isCloseTo(31.7, within(0.1));
            assertThat(siltLoam.capacityMmPerH(ponded, 0.3402)).isCloseTo(18.1, within(0.1));
            assertThat(siltLoam.pondingH(50, 0.3402)).isCloseTo(0.17, within(0.005));
            double rained = siltLoam.rainedMm(50, 0.3402, 1);
            assertThat(rained).isCloseTo(30.2, within(0.1));
            assertThat(siltLoam.capacityMmPerH(rained, 0.3402)).isCloseTo(18.7, within(0.1));
        }

        /** Oklahoma State, Rain or Shine, problem 6.5: data confirmed, answers computed. */
        @Test
        void rainSlowerThanConductivityNeverPonds() {
            GreenAmpt soil = new GreenAmpt(6.5, 170);
            assertThat(soil.pondingH(6, 0.34)).isInfinite();
            assertThat(soil.rainedMm(6, 0.34, 10)).isCloseTo(60, within(1e-9));
            assertThat(soil.pondingH(15, 0.34) * 15).isCloseTo(44.20, within(0.01));
        }
    }

    @Nested
    class Derived {

        /** The regression of 1985 against the class means of 1983: same order of magnitude. */
        @ParameterizedTest
        @MethodSource("rainward.soil.property.GreenAmptTest#classes")
        void suctionLiesWithinAFactorOfThreeOfTheTable(int row) {
            String texture = TABLE.text(row, "texture");
            int at = TEXTURES.indices()
                    .filter(r -> TEXTURES.text(r, "texture").equals(texture))
                    .findFirst()
                    .orElseThrow();
            SoilTexture soil = new SoilTexture(
                    TEXTURES.number(at, "sand_pct") / 100,
                    TEXTURES.number(at, "clay_pct") / 100,
                    2.5);
            double derived = GreenAmpt.of(soil, SaxtonRawls.of(soil)).suctionMm();
            double published = 10 * TABLE.number(row, "suction_cm");
            assertThat(derived / published).as(texture).isBetween(1 / 3.0, 3.0);
        }

        /** Li, Stevens and Simons 1976 claim 8 %. */
        @Test
        void theExplicitHalfHourStaysNearTheExactOne() {
            GreenAmpt loam = GreenAmpt.of(Soils.LOAM, SaxtonRawls.of(Soils.LOAM));
            double k = loam.conductivityMmPerH() * 0.5;
            for (double deficit = 0.02; deficit < 0.45; deficit += 0.05) {
                double head = loam.suctionMm() * deficit;
                double explicit = 0.5 * (k + Math.sqrt(k * k + 8 * k * head));
                double exact = loam.pondedMm(0.5, deficit);
                assertThat(explicit).isCloseTo(exact, within(0.085 * exact));
            }
        }
    }
}
