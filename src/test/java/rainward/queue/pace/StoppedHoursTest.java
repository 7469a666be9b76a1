package rainward.queue.pace;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.SeedingMethod;
import rainward.farm.Stage;
import rainward.farm.StageLimits;
import rainward.farm.Window;
import rainward.soil.SoilRun;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Traces;

class StoppedHoursTest {

    private static final Instant START = Instant.parse("2026-07-13T04:00:00Z");
    private static final int HOURS = 48;
    private static final int COUNT = 10;
    private static final Window HORIZON = new Window(START, START.plus(Duration.ofHours(HOURS)));

    private final double[][] rainMm = new double[HOURS][COUNT];
    private final double[] windMps = new double[HOURS];
    private final boolean[][] workable = new boolean[HOURS][COUNT];

    StoppedHoursTest() {
        for (boolean[] hour : workable) {
            Arrays.fill(hour, true);
        }
        Arrays.fill(windMps, 3);
    }

    private StoppedHours judged() {
        double[] zero = new double[HOURS];
        Traces traces = new Traces(
                new HourlyAir(START, zero, zero, windMps, zero),
                new EvaporationDemand(zero, zero),
                rainMm,
                new double[HOURS][COUNT]);
        double[][] none = new double[HOURS][COUNT];
        SoilRun soil = new SoilRun(
                START,
                new SoilRun.SeedZone(1.3, none, none, none, none),
                new SoilRun.SoilSurface(none, none, workable));
        return StoppedHours.of(recipe(), traces, soil, HORIZON, StoppedHours.Caution.USUAL);
    }

    private static Recipe recipe() {
        Stage spray = stage("spray", Operation.SPRAY, limits(OptionalDouble.of(5), 1, 6, false));
        Stage seed = stage("seed", Operation.SEED, StageLimits.seedingBy(SeedingMethod.ROLLED));
        Stage roll = stage("roll", Operation.FIRM, limits(OptionalDouble.empty(), -1, 0, true));
        return new Recipe("all", List.of(spray, seed, roll));
    }

    private static StageLimits limits(
            OptionalDouble most, double least, int dryHours, boolean rainDoesIt) {
        return new StageLimits(
                false,
                most,
                least < 0 ? OptionalDouble.empty() : OptionalDouble.of(least),
                Duration.ofHours(dryHours),
                Optional.empty(),
                rainDoesIt);
    }

    private static Stage stage(String name, Operation operation, StageLimits limits) {
        return new Stage(name, operation, Duration.ZERO, Optional.of(Duration.ofHours(24)), limits);
    }

    private static BitSet stopped(StoppedHours hours, Operation operation) {
        return hours.stopped().getOrDefault(operation, new BitSet());
    }

    @Test
    void aDryCalmWorkableDayStopsNothing() {
        assertThat(stopped(judged(), Operation.SPRAY)).isEqualTo(new BitSet());
        assertThat(stopped(judged(), Operation.SEED)).isEqualTo(new BitSet());
    }

    @Test
    void soilThatIsTooWetOnHalfTheTracesStopsSeedingButNotSpraying() {
        Arrays.fill(workable[10], 0, 5, false);
        assertThat(stopped(judged(), Operation.SEED).stream()).containsExactly(10);
        assertThat(stopped(judged(), Operation.SPRAY).isEmpty()).isTrue();
        Arrays.fill(workable[10], 0, 5, true);
        Arrays.fill(workable[10], 0, 4, false);
        assertThat(stopped(judged(), Operation.SEED).isEmpty()).isTrue();
    }

    @Test
    void windAboveOrBelowItsLimitsStopsSpraying() {
        windMps[8] = 5.5;
        windMps[9] = 0.5;
        assertThat(stopped(judged(), Operation.SPRAY).stream()).containsExactly(8, 9);
    }

    @Test
    void rainWithinTheHoursOfTheLabelStopsSpraying() {
        Arrays.fill(rainMm[20], 0, 5, 2.0);
        assertThat(stopped(judged(), Operation.SPRAY).stream())
                .containsExactly(14, 15, 16, 17, 18, 19, 20);
        assertThat(stopped(judged(), Operation.SEED).stream()).containsExactly(20);
    }

    @Test
    void aSprinkleBreaksTheLabelButStopsNoSeeder() {
        Arrays.fill(rainMm[20], 0, 5, 0.5);
        assertThat(stopped(judged(), Operation.SPRAY).stream())
                .containsExactly(14, 15, 16, 17, 18, 19, 20);
        assertThat(stopped(judged(), Operation.SEED).isEmpty()).isTrue();
    }

    @Test
    void soilThatIsTooWetIsNamedForItself() {
        Arrays.fill(workable[3], 0, 5, false);
        windMps[8] = 5.5;
        assertThat(judged().unworkable().stream()).containsExactly(3);
    }

    @Test
    void aFairRainWithinTheWaitFirms() {
        Arrays.fill(rainMm[30], 0, 6, 12.0);
        BitSet firmed = judged().firmedByRain();
        assertThat(firmed.get(6)).isFalse();
        assertThat(firmed.get(7)).isTrue();
        assertThat(firmed.get(29)).isTrue();
        assertThat(firmed.get(30)).isFalse();
    }

    @Test
    void rainOnTooFewTracesDoesNotFirm() {
        Arrays.fill(rainMm[30], 0, 5, 12.0);
        assertThat(judged().firmedByRain().isEmpty()).isTrue();
    }
}
