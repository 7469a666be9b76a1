package rainward.soil.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.farm.SoilTexture;
import rainward.soil.FieldSoil;
import rainward.soil.Soils;
import rainward.soil.SurfaceCondition;
import rainward.soil.SurfaceCondition.Tilth;
import rainward.soil.SurfaceCondition.Vegetation;
import rainward.soil.property.Layers;

/** Water of the column [mm]: laws that hold for any weather. */
class WaterColumnTest {

    private static final int TRACES = 7;

    /** A column with a storm of random weather over it. */
    private static final class Storm {
        final Layers layers;
        final WaterColumn column;
        final double[] rainMm = new double[TRACES];
        final double[] peakMmPerH = new double[TRACES];
        final double[] shade = new double[TRACES];
        private final SplittableRandom sky;

        Storm(FieldSoil soil, long seed) {
            this.layers = soil.layers();
            this.column = new WaterColumn(soil, layers, TRACES);
            this.sky = new SplittableRandom(seed);
            for (int l = 0; l < layers.count(); l++) {
                column.fill(l, sky.nextDouble(0.05, 0.6));
            }
        }

        double hour() {
            for (int i = 0; i < TRACES; i++) {
                rainMm[i] = sky.nextDouble() < 0.7 ? 0 : Math.pow(sky.nextDouble(), 3) * 60;
                peakMmPerH[i] = rainMm[i] * sky.nextDouble(1, 2);
                shade[i] = sky.nextDouble();
            }
            double reference = sky.nextDouble() < 0.5 ? 0 : sky.nextDouble(0.9);
            column.hour(new RainHour(rainMm, peakMmPerH), reference, shade);
            return reference;
        }

        double storedMm(int trace) {
            double above =
                    column.infiltration().leafMm[trace] + column.infiltration().pondMm[trace];
            return above
                    + Arrays.stream(column.waterMm).mapToDouble(w -> w[trace]).sum();
        }

        double lostMm(int trace) {
            return column.soilEvaporationMm[trace]
                    + column.transpiredMm[trace]
                    + column.drainedMm[trace]
                    + column.infiltration().leafEvaporationMm[trace]
                    + column.infiltration().runoffMm[trace];
        }
    }

    static SoilTexture[] textures() {
        return Soils.ALL.toArray(SoilTexture[]::new);
    }

    @Nested
    class Laws {

        @ParameterizedTest
        @MethodSource("rainward.soil.water.WaterColumnTest#textures")
        void noWaterIsMadeOrLostInAnyHour(SoilTexture texture) {
            for (SurfaceCondition surface : new SurfaceCondition[] {
                SurfaceCondition.TILLED, SurfaceCondition.SHORT_GRASS, weedyStubble()
            }) {
                Storm storm = new Storm(new FieldSoil(texture, 0.05, surface), 20260421);
                double[] before = new double[TRACES];
                for (int h = 0; h < 2000; h++) {
                    for (int i = 0; i < TRACES; i++) {
                        before[i] = storm.storedMm(i);
                    }
                    storm.hour();
                    for (int i = 0; i < TRACES; i++) {
                        double gain = storm.storedMm(i) - before[i];
                        assertThat(gain + storm.lostMm(i)).isCloseTo(storm.rainMm[i], within(1e-9));
                    }
                }
            }
        }

        @ParameterizedTest
        @MethodSource("rainward.soil.water.WaterColumnTest#textures")
        void waterStaysBetweenAirDryAndSaturation(SoilTexture texture) {
            Storm storm = new Storm(Soils.grass(texture), 7);
            for (int h = 0; h < 2000; h++) {
                storm.hour();
                for (int l = 0; l < storm.layers.count(); l++) {
                    double pore = storm.layers.poreMm[l];
                    for (double water : storm.column.waterMm[l]) {
                        assertThat(water).isBetween(0.0, pore * (1 + 1e-12));
                    }
                }
            }
        }

        @Test
        void nothingLeavesFasterThanTheSkyAsks() {
            Storm storm = new Storm(Soils.grass(Soils.LOAM), 99);
            for (int h = 0; h < 2000; h++) {
                double reference = storm.hour();
                for (int i = 0; i < TRACES; i++) {
                    double up = storm.column.soilEvaporationMm[i]
                            + storm.column.transpiredMm[i]
                            + storm.column.infiltration().leafEvaporationMm[i];
                    assertThat(up).isBetween(0.0, 1.2 * reference + 1e-12);
                }
            }
        }

        private SurfaceCondition weedyStubble() {
            return new SurfaceCondition(Tilth.FIRMED, 0.6, new Vegetation(0.3, 35));
        }
    }
}
