package rainward.stand.bed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rainward.farm.SeedingMethod;
import rainward.stand.Seedbeds;
import rainward.stand.SeedingConditions;
import rainward.stand.StandRules;

class SurfaceDamageTest {
    /** The storm of the worked example: 8.47 MJ/ha, 54.8 mm/h. */
    private static final double STORM_MJ = 8.47;

    private static final double STORM_PEAK = 54.77;

    @Test
    void aCloudburstTakesHalfOfThrownSeedOnASteepBareSlope() {
        double thrown = damage(0.12, false, 0, 0.5).stayingFraction(STORM_MJ, STORM_PEAK);
        double rolled = damage(0.12, true, 0, 1.3).stayingFraction(STORM_MJ, STORM_PEAK);
        assertThat(thrown).isBetween(0.2, 0.6);
        assertThat(rolled).isGreaterThan(0.8);
    }

    @Test
    void aGentleRainDoesNothing() {
        SurfaceDamage damage = damage(0.12, false, 0, 1.3);
        double energy = RainErosion.hourEnergyMjPerHa(5, 6);
        assertThat(damage.stayingFraction(energy, 6)).isGreaterThan(0.9999);
        assertThat(damage.sealedFraction(energy, 6)).isZero();
    }

    @Test
    void steeperLooserBarerAndShallowerNeverLoseLess() {
        var sky = new SplittableRandom(1987);
        for (int i = 0; i < 2000; i++) {
            double slope = sky.nextDouble(0.5);
            double cover = sky.nextDouble(0.9);
            double depth = sky.nextDouble(0.3, 4);
            double rain = sky.nextDouble(1, 60);
            double peak = rain * sky.nextDouble(1, 2);
            double energy = RainErosion.hourEnergyMjPerHa(rain, peak);
            double kept = damage(slope, true, cover, depth).stayingFraction(energy, peak);
            assertThat(kept).isBetween(0.0, 1.0);
            assertThat(damage(slope + 0.05, true, cover, depth).stayingFraction(energy, peak))
                    .isLessThanOrEqualTo(kept);
            assertThat(damage(slope, false, cover, depth).stayingFraction(energy, peak))
                    .isLessThanOrEqualTo(kept);
            assertThat(damage(slope, true, cover + 0.1, depth).stayingFraction(energy, peak))
                    .isGreaterThanOrEqualTo(kept);
            assertThat(damage(slope, true, cover, depth + 0.5).stayingFraction(energy, peak))
                    .isGreaterThanOrEqualTo(kept);
            assertThat(damage(slope, true, cover, depth).sealedFraction(energy, peak))
                    .isLessThanOrEqualTo(
                            damage(slope, false, cover, depth).sealedFraction(energy, peak));
        }
    }

    private static SurfaceDamage damage(
            double slope, boolean firmed, double cover, double depthCm) {
        return new SurfaceDamage(
                new SeedingConditions(
                        SeedingMethod.DRILLED, Seedbeds.SILT_LOAM, slope, firmed, cover),
                depthCm,
                StandRules.DEFAULT.damage());
    }
}
