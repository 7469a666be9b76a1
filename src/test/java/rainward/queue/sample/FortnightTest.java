package rainward.queue.sample;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FortnightTest {

    @Test
    void aPriceOnChangeMakesTheNextDaySteadier() {
        Fortnight.Steadiness steady = Fortnight.of(GeneratedDays.Kind.ONE_STORM, 1_000, 0.01);
        assertThat(steady.movedPct()).isBetween(0.1, 0.8 * steady.freshMovedPct());
        assertThat(steady.freshMovedPct()).isLessThanOrEqualTo(100);
    }

    @Test
    void equalInputGivesEqualFigures() {
        assertThat(Fortnight.of(GeneratedDays.Kind.DRY, 50, 0.01))
                .isEqualTo(Fortnight.of(GeneratedDays.Kind.DRY, 50, 0.01));
    }

    @Test
    void whereNoForecastChangesAHighPriceKeepsTheOrderThroughWorkBegunAndDone() {
        Fortnight.Steadiness steady = Fortnight.of(GeneratedDays.Kind.DRY, 300, 0.3);
        assertThat(steady.movedPct()).isLessThan(2);
        assertThat(steady.freshMovedPct()).isGreaterThan(20);
    }
}
