package rainward.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import rainward.farm.Mix;
import rainward.intake.Shipped;
import rainward.readiness.Figures.Factor;
import rainward.readiness.Figures.Sensitivity;
import rainward.stand.model.StandModel;

class SensitivitiesTest {
    private static final Mix MIX = Shipped.mix("three brassicas");

    @Test
    void inADryFieldWithoutForecastRainTheRainIsWhatLacks() {
        List<Sensitivity> all = of(new Ahead());
        assertThat(all.get(0).factor()).isEqualTo(Factor.RAIN);
        assertThat(all.get(0).gain()).isGreaterThan(0.4);
        assertThat(all).extracting(Sensitivity::factor).containsExactlyInAnyOrder(Factor.values());
    }

    @Test
    void onHotMoistGroundTheHeatIsWhatLacks() {
        Ahead hot = new Ahead().moist();
        for (double[] row : hot.surfaceTempC) {
            Arrays.fill(row, 59);
        }
        assertThat(of(hot).get(0).factor()).isEqualTo(Factor.HEAT);
    }

    @Test
    void nothingIsGainedWhereAllIsWell() {
        for (Sensitivity sensitivity : of(new Ahead().moist())) {
            assertThat(sensitivity.gain()).isCloseTo(0, within(0.01));
        }
    }

    @Test
    void lateInTheSeasonTheSeasonIsWhatLacks() {
        Ahead late = new Ahead().moist();
        var august = late.stand(MIX);
        var moved = Ahead.movedBy(august, Duration.ofDays(30));
        List<Sensitivity> all =
                new Sensitivities(StandModel.usual()).of(moved, moved.hours().start());
        assertThat(all.get(0).factor()).isEqualTo(Factor.SEASON);
        assertThat(all.get(0).perfectWorth()).isGreaterThan(0.95);
    }

    private static List<Sensitivity> of(Ahead ahead) {
        return new Sensitivities(StandModel.usual()).of(ahead.stand(MIX), Ahead.TUESDAY);
    }
}
