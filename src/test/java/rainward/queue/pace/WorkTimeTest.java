package rainward.queue.pace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.queue.plan.SmallFarm;
import rainward.queue.problem.Filling;

class WorkTimeTest {

    private static final double M_PER_FT = 0.3048;
    private static final double KM_PER_MILE = 1.609344;
    private static final double HA_PER_ACRE = 0.40468564224;

    private static Machine machine(Machine.WorkPace pace, Optional<Machine.Refill> refill) {
        return new Machine(
                "m",
                Set.of(Operation.SPREAD),
                pace,
                new Machine.Travel(25, Duration.ZERO, SmallFarm.YARD),
                refill,
                Machine.MassClass.LIGHT,
                Machine.USUAL_MIX_CHANGE);
    }

    /** Rows of Iowa State University AgDM A3-24 / PM 696 (2001), effective capacity in acres/h. */
    @ParameterizedTest(name = "{0} ft at {1} mph, {2}: {3} ac/h")
    @CsvSource({
        "40, 6, 0.70, 20.4",
        "50, 6, 0.70, 25.5",
        "60, 6, 0.68, 29.7",
        "60, 12, 0.68, 59.3",
        "80, 12, 0.68, 79.1",
        "15, 5, 0.63, 5.7",
        "20, 6, 0.63, 9.2",
        "37.5, 6, 0.65, 17.7",
        "8, 5, 0.85, 4.1"
    })
    void aLargeFieldTakesWhatThePublishedCapacitySays(
            double widthFt, double mph, double efficiency, double acresPerH) {
        Machine machine = machine(
                new Machine.WorkPace(widthFt * M_PER_FT, mph * KM_PER_MILE, efficiency, 0),
                Optional.empty());
        double hours = WorkTime.hours(machine, 100 * HA_PER_ACRE, Optional.empty());
        assertThat(100 / hours).isCloseTo(acresPerH, within(0.06));
    }

    @Test
    void smallFieldsTurnMoreForTheirArea() {
        Machine machine = machine(new Machine.WorkPace(2, 5, 1, 0.5), Optional.empty());
        // 1 ha is a square of 100 m: 50 passes of 2 m, half a minute each, beside one hour of work.
        assertThat(WorkTime.hours(machine, 1, Optional.empty()))
                .isCloseTo(1 + 25 / 60.0, within(1e-9));
        assertThat(WorkTime.hours(machine, 0.25, Optional.empty()) * 4)
                .isGreaterThan(WorkTime.hours(machine, 1, Optional.empty()));
    }

    @Test
    void aBoxIsFilledAgainInProportionToTheArea() {
        Machine machine = machine(
                new Machine.WorkPace(2, 5, 1, 0),
                Optional.of(new Machine.Refill(2, Duration.ofMinutes(30))));
        assertThat(WorkTime.hours(machine, 4, Optional.empty())).isCloseTo(4 + 1, within(1e-9));
    }

    /** By hand: two passes of an hour, three stops of half an hour, twenty minutes of road. */
    @Test
    void whereLoadsAreKnownTheyDecideAndNotTheArea() {
        Machine spreader = machine(
                new Machine.WorkPace(2, 5, 1, 0),
                Optional.of(new Machine.Refill(4, Duration.ofMinutes(30))));
        Filling loads = new Filling(2, 3, Duration.ofMinutes(20));
        assertThat(WorkTime.hours(spreader, 1, Optional.of(loads)))
                .isCloseTo(2 + 1.5 + 1 / 3.0, within(1e-9));
        assertThat(WorkTime.hours(spreader, 1, Optional.empty())).isCloseTo(1.125, within(1e-9));
    }

    @Test
    void aMachineWithoutAStopOfItsOwnTakesTheUsualOne() {
        Machine plain = machine(new Machine.WorkPace(2, 5, 1, 0), Optional.empty());
        Filling loads = new Filling(1, 3, Duration.ZERO);
        assertThat(WorkTime.hours(plain, 1, Optional.of(loads))).isCloseTo(2, within(1e-9));
    }

    @Test
    void minutesAreRoundedUp() {
        Machine machine = machine(new Machine.WorkPace(2, 5, 1, 0), Optional.empty());
        assertThat(WorkTime.minutes(machine, 1, Optional.empty())).isEqualTo(60);
        assertThat(WorkTime.minutes(machine, 1.001, Optional.empty())).isEqualTo(61);
        assertThat(WorkTime.minutes(machine, 1e-6, Optional.empty())).isEqualTo(1);
    }
}
