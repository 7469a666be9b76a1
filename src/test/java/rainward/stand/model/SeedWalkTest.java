package rainward.stand.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.Mix;
import rainward.stand.RandomSeedbed;
import rainward.stand.Seedbeds;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;
import rainward.stand.StandRules;

/** The fast walk over all seeding hours against one seed at a time, on random weather. */
class SeedWalkTest {
    private static final int SEEDING_HOURS = 168;
    private static final StandRules HOURLY = new StandRules(
            new StandRules.Grain(1, 5),
            StandRules.DEFAULT.fieldFraction(),
            StandRules.DEFAULT.seedling(),
            StandRules.DEFAULT.damage(),
            StandRules.DEFAULT.checkDays());

    @ParameterizedTest
    @ValueSource(strings = {"turnip", "white clover", "winter wheat", "soybean"})
    void allLossesAreThoseOfSeedFollowedHourByHour(String species) {
        Mix mix = Seedbeds.alone(species);
        var sky = new SplittableRandom(species.hashCode());
        double died = 0;
        for (int i = 0; i < 12; i++) {
            StandCase question =
                    RandomSeedbed.of(sky, 240, 1).sown(mix, Seedbeds.rolled(0.08), SEEDING_HOURS);
            StandOutlook fast = new StandModel(HOURLY).outlook(question);
            for (int h = 0; h < SEEDING_HOURS; h += 5) {
                NaiveSeed seed = new NaiveSeed(question, mix.components().get(0).species(), HOURLY);
                seed.sow(h);
                same(fast.losses().get(h), seed);
                died += seed.dead;
            }
        }
        assertThat(died).as("false starts seen at all").isGreaterThan(0);
    }

    private static void same(StandOutlook.Losses fast, NaiveSeed seed) {
        assertThat(fast.falseStartFraction()).isCloseTo(seed.dead, within(1e-9));
        assertThat(fast.stillDryFraction()).isCloseTo(seed.waiting, within(1e-9));
        assertThat(fast.heatFraction()).isCloseTo(seed.scorched, within(1e-9));
        assertThat(fast.washOutFraction()).isCloseTo(seed.washed, within(1e-9));
    }
}
