package rainward.soil.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rainward.farm.SoilTexture;
import rainward.soil.FieldSoil;
import rainward.soil.Soils;
import rainward.soil.SurfaceCondition;
import rainward.soil.property.CurveNumber;
import rainward.soil.property.Layers;
import rainward.soil.property.SaxtonRawls;

/** Rain on its way in, and what runs off. */
class InfiltrationTest {

    private static double runoffMm(
            SoilTexture texture, double slope, double rainMm, double peakMmPerH) {
        FieldSoil soil = new FieldSoil(texture, slope, SurfaceCondition.BARE);
        Layers layers = soil.layers();
        WaterColumn column = new WaterColumn(soil, layers, 1);
        for (int l = 0; l < layers.count(); l++) {
            column.fill(l, 0.9 * SaxtonRawls.of(texture).fieldCapacityFraction());
        }
        column.hour(
                new RainHour(new double[] {rainMm}, new double[] {peakMmPerH}), 0, new double[] {1
                });
        return column.infiltration().runoffMm[0];
    }

    @Test
    void steeperSlopeNeverLowersRunoff() {
        for (SoilTexture texture : Soils.ALL) {
            double before = 0;
            for (double slope = 0; slope <= 0.6; slope += 0.05) {
                double here = runoffMm(texture, slope, 60, 100);
                assertThat(here).isGreaterThanOrEqualTo(before);
                before = here;
            }
        }
    }

    @Test
    void aHarderBurstNeverLowersRunoff() {
        double before = 0;
        for (double peak = 40; peak <= 80; peak += 5) {
            double here = runoffMm(Soils.LOAM, 0.05, 40, peak);
            assertThat(here).isGreaterThanOrEqualTo(before - 1e-9);
            before = here;
        }
    }

    @Test
    void clayShedsAStormThatSandSwallows() {
        assertThat(runoffMm(Soils.SAND, 0.1, 40, 60)).isZero();
        assertThat(runoffMm(Soils.CLAY, 0.1, 40, 60)).isGreaterThan(15);
    }

    /**
     * TR-55 for settled bare fallow on clay (group D, 94) and loam (group B, 86): a storm of 40 mm
     * in an hour must leave the same order of runoff.
     */
    @Test
    void runoffOfAStormIsOfTheOrderOfTheCurveNumber() {
        assertThat(runoffMm(Soils.CLAY, 0.2, 40, 60))
                .isCloseTo(new CurveNumber(94).runoffMm(40), within(12.0));
        assertThat(runoffMm(Soils.LOAM, 0.2, 40, 60))
                .isCloseTo(new CurveNumber(86).runoffMm(40), within(12.0));
    }

    @Test
    void hollowsHoldWhatOnstadPrints() {
        assertThat(SurfaceCondition.Tilth.LOOSE.hollowsMm(0)).isCloseTo(3.48, within(1e-9));
        assertThat(SurfaceCondition.Tilth.LOOSE.hollowsMm(0.6)).isZero();
    }
}
