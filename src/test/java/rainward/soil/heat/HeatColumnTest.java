package rainward.soil.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.soil.FieldSoil;
import rainward.soil.Skies;
import rainward.soil.Soils;
import rainward.soil.column.SoilColumn;
import rainward.soil.property.HeatProperties;
import rainward.soil.property.Layers;
import rainward.soil.water.WaterColumn;
import rainward.weather.past.ObservedWeather;

/** Heat in the soil [C]. */
class HeatColumnTest {

    private static final double[] NO_SHADE = {1};

    private static HeatColumn uniform(FieldSoil soil, WaterColumn water, double tempC) {
        HeatColumn heat = new HeatColumn(soil, soil.layers(), 1);
        for (int l = 0; l < heat.count(); l++) {
            heat.fill(l, tempC);
        }
        for (int l = 0; l < water.waterMm.length; l++) {
            water.fill(l, 0.25);
        }
        return heat;
    }

    @Nested
    class Published {

        /** Depths at which a wave is left to 1/e, {@code d = sqrt(2 D / w)} (Hillel 1982). */
        @ParameterizedTest
        @CsvSource({
            "0.2e-6, 0.0742, 1.417", "0.5e-6, 0.1173, 2.240",
            "0.8e-6, 0.1483, 2.834", "1.0e-6, 0.1658, 3.168"
        })
        void dampingDepths(double diffusivity, double dailyM, double yearlyM) {
            assertThat(HeatProperties.dampingDepthM(diffusivity, 86400))
                    .isCloseTo(dailyM, within(1e-4));
            assertThat(HeatProperties.dampingDepthM(diffusivity, 365 * 86400.0))
                    .isCloseTo(yearlyM, within(1e-3));
        }

        /**
         * Dry to moist mineral soil spans 0.2 to 0.8e-6 m2/s (Campbell and Norman 1998, from
         * memory).
         */
        @Test
        void diffusivityOfLoamLiesInTheHandbooksRange() {
            HeatProperties loam = HeatProperties.of(Soils.LOAM, 0.46);
            assertThat(loam.conductivityWPerMK(0.05) / loam.capacityJPerM3K(0.023))
                    .isBetween(0.15e-6, 0.4e-6);
            assertThat(loam.conductivityWPerMK(0.6) / loam.capacityJPerM3K(0.276))
                    .isBetween(0.4e-6, 0.8e-6);
        }

        /** A daily wave in the air goes down with the damping and the lag of the sinusoid. */
        @Test
        void aDailyWaveDampsAndLags() {
            FieldSoil soil = Soils.bare(Soils.LOAM);
            Layers layers = soil.layers();
            WaterColumn water = new WaterColumn(soil, layers, 1);
            HeatColumn heat = uniform(soil, water, 20);
            Wave upper = new Wave();
            Wave lower = new Wave();
            for (int h = 0; h < 24 * 60; h++) {
                double air = 20 + 10 * Math.sin(2 * Math.PI * h / 24);
                heat.hour(SurfaceHeat.stillAt(air), NO_SHADE, water);
                if (h >= 24 * 50) {
                    upper.add(h, heat.tempC[2][0]);
                    lower.add(h, heat.tempC[5][0]);
                }
            }
            HeatProperties loam =
                    HeatProperties.of(Soils.LOAM, layers.poreMm[2] / layers.thicknessMm[2]);
            double wetness = 0.25 * layers.thicknessMm[2] / layers.poreMm[2];
            double diffusivity = loam.conductivityWPerMK(wetness) / loam.capacityJPerM3K(0.25);
            double apart = (layers.middleCm(5) - layers.middleCm(2)) / 100;
            double depths = apart / HeatProperties.dampingDepthM(diffusivity, 86400);
            double left = Math.exp(-depths);
            assertThat(lower.amplitude() / upper.amplitude()).isCloseTo(left, within(0.15 * left));
            double lagH = depths * 24 / (2 * Math.PI);
            assertThat(lower.phaseH() - upper.phaseH()).isCloseTo(lagH, within(0.15 * lagH));
        }

        /**
         * Parton and Logan 1981, soil at 10 cm (a 0.45, b 2.28, c 1.83): from the column's own
         * lowest and highest their curve comes back; they state a mean error of 1.20 C at that
         * depth.
         */
        @Test
        void theDayAtTenCentimetresHasTheShapeOfPartonAndLogan() {
            FieldSoil soil = Soils.bare(Soils.LOAM);
            SoilColumn column = new SoilColumn(soil);
            ObservedWeather past = Skies.past(20, 10, 20);
            double[] temp = column.follow(column.start(past), past, 10).tempC();
            int day = 24 * 18;
            double low = Double.MAX_VALUE;
            double high = -Double.MAX_VALUE;
            for (int h = 0; h < 24; h++) {
                low = Math.min(low, temp[day + h]);
                high = Math.max(high, temp[day + h]);
            }
            double missed = 0;
            for (int h = 0; h < 24; h++) {
                missed += Math.abs(partonLogan(h + 1, low, high) - temp[day + h]) / 24;
            }
            assertThat(missed).isLessThan(2.0);
        }

        /** Sunrise at 5, sunset at 20, as the test's sky has it. */
        private double partonLogan(double hour, double low, double high) {
            double length = 15;
            double m = hour - 5 - 1.83;
            double swing = high - low;
            if (m >= 0 && hour <= 20) {
                return low + swing * Math.sin(Math.PI * m / (length + 2 * 0.45));
            }
            double sunset = low + swing * Math.sin(Math.PI * (15 - 1.83) / (length + 2 * 0.45));
            double since = hour > 20 ? hour - 20 : hour + 4;
            return low + (sunset - low) * Math.exp(-2.28 * since / (24 - length));
        }
    }

    @Nested
    class Laws {

        @Test
        void stillAirAtTheSoilsOwnTemperatureChangesNothing() {
            FieldSoil soil = Soils.grass(Soils.LOAM);
            WaterColumn water = new WaterColumn(soil, soil.layers(), 1);
            HeatColumn heat = uniform(soil, water, 17);
            for (int h = 0; h < 100; h++) {
                heat.hour(SurfaceHeat.stillAt(17), NO_SHADE, water);
            }
            for (double[] layer : heat.tempC) {
                assertThat(layer[0]).isCloseTo(17, within(1e-9));
            }
        }

        @Test
        void grassKeepsTheSoilCoolerThanBareGroundInSun() {
            ObservedWeather sunny = Skies.past(20, -1, 0);
            double bare = warmest(Soils.bare(Soils.LOAM), sunny);
            double grass = warmest(Soils.grass(Soils.LOAM), sunny);
            assertThat(bare).isGreaterThan(grass + 2);
        }

        private double warmest(FieldSoil soil, ObservedWeather past) {
            SoilColumn column = new SoilColumn(soil);
            double[] temp = column.follow(column.start(past), past, 2).tempC();
            double most = -100;
            for (double t : temp) {
                most = Math.max(most, t);
            }
            return most;
        }
    }

    /** First harmonic of a day. */
    private static final class Wave {
        private double cosine;
        private double sine;

        void add(int hour, double value) {
            cosine += value * Math.cos(2 * Math.PI * hour / 24);
            sine += value * Math.sin(2 * Math.PI * hour / 24);
        }

        double amplitude() {
            return Math.hypot(cosine, sine);
        }

        double phaseH() {
            return Math.atan2(-cosine, sine) * 24 / (2 * Math.PI);
        }
    }
}
