package rainward.stand.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.Mix;
import rainward.farm.SeedingMethod;
import rainward.intake.Shipped;
import rainward.stand.RandomSeedbed;
import rainward.stand.SeedPlacement;
import rainward.stand.Seedbeds;
import rainward.stand.SeedingConditions;
import rainward.stand.StandOutlook;
import rainward.stand.seedling.HydrothermalTime;

/** What must hold under any weather. */
class StandLawsTest {
    private static final Mix MIX = Shipped.mix("clover and turnip");

    @Test
    void chancesWorthsAndLossesStayWithinTheirBounds() {
        var sky = new SplittableRandom(20260715);
        for (int i = 0; i < 40; i++) {
            StandOutlook outlook = RandomSeedbed.of(sky, 240, 20).outlook(MIX, 168);
            for (int h = 0; h < 168; h++) {
                assertThat(outlook.chance()[h]).isBetween(0.0, 1.0);
                assertThat(outlook.worth()[h]).isBetween(0.0, MIX.season().fullWorth() + 1e-9);
                StandOutlook.Losses losses = outlook.losses().get(h);
                double all = losses.falseStartFraction()
                        + losses.washOutFraction()
                        + losses.heatFraction()
                        + losses.stillDryFraction();
                assertThat(losses.washOutFraction()).isGreaterThan(-1e-9);
                assertThat(all).isBetween(-1e-9, 1 + 1e-9);
                StandOutlook.EmergenceRange range = outlook.emergence().get(h);
                assertThat(range.p10Days()).isLessThanOrEqualTo(range.p50Days());
                assertThat(range.p50Days()).isLessThanOrEqualTo(range.p90Days());
            }
        }
    }

    /** By the time that the stand is up on average, half of the seed must have germinated. */
    @ParameterizedTest
    @ValueSource(strings = {"rape", "turnip", "radish", "red clover", "winter wheat", "field pea"})
    void emergenceNeverPrecedesGermination(String name) {
        HydrothermalTime seed = new HydrothermalTime(Shipped.species(name));
        for (double tempC = 8; tempC <= 30; tempC += 2) {
            for (double mpa : new double[] {-0.03, -0.1, -0.3}) {
                StandOutlook outlook =
                        Seedbeds.steady(240, mpa, tempC).outlook(Seedbeds.alone(name), 1);
                StandOutlook.EmergenceRange range = outlook.emergence().get(0);
                if (range.known() && range.p50Days() < 10) {
                    double felt = mpa / SeedPlacement.contact(Seedbeds.FIRM_AND_FLAT);
                    assertThat(seed.germinatedFraction(felt, tempC, range.p50Days()))
                            .as("%s at %s C, %s MPa", name, tempC, mpa)
                            .isGreaterThan(0.5);
                }
            }
        }
    }

    @Test
    void aSteeperSlopeNeverLosesLessToRain() {
        var sky = new SplittableRandom(9);
        for (int i = 0; i < 30; i++) {
            Seedbeds bed = RandomSeedbed.of(sky, 240, 10);
            double before = 0;
            for (double slope = 0; slope <= 0.3; slope += 0.03) {
                StandOutlook outlook =
                        StandModel.usual().outlook(bed.sown(MIX, Seedbeds.rolled(slope), 24));
                double washed = outlook.losses().get(0).washOutFraction();
                assertThat(washed).isGreaterThanOrEqualTo(before - 1e-12);
                before = washed;
            }
        }
    }

    @Test
    void thrownSeedNeverBeatsTheSameSeedRolledIn() {
        var sky = new SplittableRandom(10);
        Mix sameRate = evenRates(MIX);
        for (int i = 0; i < 30; i++) {
            Seedbeds bed = RandomSeedbed.of(sky, 240, 10);
            StandOutlook rolled =
                    StandModel.usual().outlook(bed.sown(sameRate, Seedbeds.rolled(0.06), 24));
            StandOutlook thrown = StandModel.usual().outlook(bed.sown(sameRate, thrown(), 24));
            assertThat(thrown.chance()[0]).isLessThanOrEqualTo(rolled.chance()[0] + 1e-9);
        }
    }

    @Test
    void theSameWeatherTwiceGivesTheSameAnswer() {
        Seedbeds bed = RandomSeedbed.of(new SplittableRandom(3), 240, 50);
        assertThat(bed.outlook(MIX, 168).chance())
                .isEqualTo(bed.outlook(MIX, 168).chance());
    }

    /** What one hour gets must not depend on how many hours were asked for. */
    @Test
    void anHourAskedAloneGetsTheAnswerItGetsAmongOthers() {
        Seedbeds bed = RandomSeedbed.of(new SplittableRandom(4), 240, 30);
        StandOutlook all = bed.outlook(MIX, 168);
        StandOutlook one = bed.outlook(MIX, 1);
        assertThat(one.chance()[0]).isCloseTo(all.chance()[0], within(1e-12));
        assertThat(one.worth()[0]).isCloseTo(all.worth()[0], within(1e-12));
    }

    private static Mix evenRates(Mix mix) {
        return new Mix(
                mix.name(),
                mix.components().stream()
                        .map(c -> new rainward.farm.MixComponent(
                                c.species(),
                                c.drilledKgPerHa(),
                                c.drilledKgPerHa(),
                                c.standWeight()))
                        .toList(),
                mix.sowingDepthCm(),
                mix.standTargetFraction(),
                mix.season());
    }

    private static SeedingConditions thrown() {
        return new SeedingConditions(SeedingMethod.BROADCAST, Seedbeds.SILT_LOAM, 0.06, true, 0);
    }
}
