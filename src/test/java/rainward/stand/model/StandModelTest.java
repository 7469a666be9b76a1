package rainward.stand.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.stand.Seedbeds.FIELD_CAPACITY_MPA;
import static rainward.stand.Seedbeds.WILTING_POINT_MPA;
import static rainward.stand.Seedbeds.alone;
import static rainward.stand.Seedbeds.steady;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.Mix;
import rainward.intake.Shipped;
import rainward.stand.StandOutlook;

class StandModelTest {
    private static final Mix TURNIP = alone("turnip");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rape", "turnip", "kale", "radish", "white clover", "red clover",
                "crimson clover", "oats", "barley", "winter wheat", "cereal rye", "field pea",
                "soybean"
            })
    void seedAtFieldCapacityAndBestWarmthAlwaysComesUp(String species) {
        double best = Shipped.species(species).cardinal().optimumTempC();
        StandOutlook outlook = steady(480, FIELD_CAPACITY_MPA, best).outlook(alone(species), 24);
        assertThat(outlook.chance()).containsOnly(1);
        assertThat(outlook.worth()).containsOnly(1);
        assertThat(outlook.losses().get(0).falseStartFraction()).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"turnip", "red clover", "winter wheat", "soybean"})
    void seedAtWiltingPointNeverGerminatesAndWaits(String species) {
        StandOutlook outlook = steady(480, WILTING_POINT_MPA, 25).outlook(alone(species), 24);
        assertThat(outlook.losses().get(0).stillDryFraction()).isCloseTo(1, within(1e-9));
        assertThat(outlook.losses().get(0).falseStartFraction()).isZero();
    }

    @Test
    void seedLeftDryIsNoStandAndNotLost() {
        StandOutlook outlook = steady(240, WILTING_POINT_MPA, 25).outlook(TURNIP, 1);
        assertThat(outlook.chance()[0]).isZero();
        assertThat(outlook.losses().get(0).stillDryFraction()).isCloseTo(1, within(1e-9));
    }

    @Test
    void aLightWettingThenDroughtIsAFalseStart() {
        StandOutlook light =
                steady(240, FIELD_CAPACITY_MPA, 25).drought(36, 240, 6).outlook(TURNIP, 1);
        assertThat(light.losses().get(0).falseStartFraction()).isGreaterThan(0.9);
        assertThat(light.chance()[0]).isZero();
    }

    @Test
    void aSoakingThatStaysBeatsALightWettingThenDrought() {
        double soaked = steady(240, FIELD_CAPACITY_MPA, 25).outlook(TURNIP, 1).worth()[0];
        double light = steady(240, FIELD_CAPACITY_MPA, 25)
                .drought(36, 240, 6)
                .outlook(TURNIP, 1)
                .worth()[0];
        assertThat(soaked).isGreaterThan(light + 0.5);
    }

    @Test
    void aBriefDryDipOnlyHoldsItUp() {
        StandOutlook dip =
                steady(240, FIELD_CAPACITY_MPA, 25).drought(36, 44, 6).outlook(TURNIP, 1);
        StandOutlook steady = steady(240, FIELD_CAPACITY_MPA, 25).outlook(TURNIP, 1);
        assertThat(dip.chance()[0]).isEqualTo(1);
        assertThat(dip.emergence().get(0).p50Days())
                .isGreaterThanOrEqualTo(steady.emergence().get(0).p50Days());
    }

    @Test
    void seedThatLiesDryComesUpWithTheRain() {
        StandOutlook outlook =
                steady(300, FIELD_CAPACITY_MPA, 25).drought(0, 96, 6).outlook(TURNIP, 96);
        assertThat(outlook.chance()).containsOnly(1);
        assertThat(outlook.emergence().get(0).p50Days())
                .isCloseTo(outlook.emergence().get(95).p50Days() + 95 / 24.0, within(4 / 24.0));
    }
}
