package rainward.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import rainward.cycle.ground.GroundMemory;
import rainward.cycle.ground.GroundPast;
import rainward.cycle.ground.Stretch;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.StageRecord;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Plan;
import rainward.soil.SoilState;
import rainward.weather.past.ObservedWeather;

class GroundMemoryTest {

    private static final ObservedWeather WEATHER =
            DryJuly.past(DryJuly.MILL.place(), 30).weather();

    private static FieldCase tilled(Instant at) {
        StageRecord till =
                new StageRecord("till", Optional.empty(), Optional.of(at), Optional.of("tiller"));
        return new FieldCase(
                DryJuly.field("Ford", DryJuly.MILL, 2),
                new FieldStatus(
                        FieldState.IN_WORK,
                        List.of(till),
                        Optional.empty(),
                        Optional.empty(),
                        false));
    }

    private static GroundPast past(FieldCase item, Instant to) {
        return new GroundPast(
                item,
                Optional.of(DryJuly.WORKED),
                Stretch.of(WEATHER, WEATHER.air().start(), to),
                List.of());
    }

    private static void assertAlike(SoilState one, SoilState other) {
        assertThat(one.at()).isEqualTo(other.at());
        assertThat(one.waterFraction()).containsExactly(other.waterFraction(), Offset.offset(1e-9));
        assertThat(one.tempC()).containsExactly(other.tempC(), Offset.offset(1e-6));
    }

    @Test
    void whatIsRememberedIsWhatWouldBeReckonedAnew() {
        GroundMemory memory = GroundMemory.ofSeason();
        FieldCase item = tilled(DryJuly.MONDAY_FIVE.minus(Duration.ofHours(77)));
        GroundPast whole = past(item, DryJuly.MONDAY_FIVE);

        SoilState anew = whole.stateNow();
        assertAlike(whole.stateNow(memory), anew);
        assertAlike(whole.stateNow(memory), anew);
    }

    @Test
    void groundThatWasTilledIsNotTakenForGroundThatWasNot() {
        GroundMemory memory = GroundMemory.ofSeason();
        FieldCase untouched = DryJuly.untouched("Ford", DryJuly.MILL, 2);
        FieldCase tilled = tilled(DryJuly.MONDAY_FIVE.minus(Duration.ofHours(77)));

        past(untouched, DryJuly.MONDAY_FIVE).stateNow(memory);

        assertAlike(
                past(tilled, DryJuly.MONDAY_FIVE).stateNow(memory),
                past(tilled, DryJuly.MONDAY_FIVE).stateNow());
        assertThat(past(tilled, DryJuly.MONDAY_FIVE).stateNow(memory).waterFraction()[0])
                .isNotEqualTo(
                        past(untouched, DryJuly.MONDAY_FIVE).stateNow(memory).waterFraction()[0]);
    }

    @Test
    void aLaterHourThatIsKnownDoesNotReachBackToAnEarlierOne() {
        GroundMemory memory = GroundMemory.ofSeason();
        FieldCase item = DryJuly.untouched("Ford", DryJuly.MILL, 2);
        Instant earlier = DryJuly.MONDAY_FIVE.minus(Duration.ofHours(31));

        past(item, DryJuly.MONDAY_FIVE).stateNow(memory);
        SoilState before = past(item, earlier).stateNow(memory);

        assertThat(before.at()).isEqualTo(earlier);
    }

    @Test
    void anOrderAloneIsTheOrderOfAWholeRound() {
        CycleInput input = DryJuly.input(CycleTest.FIELDS, DryJuly.stormAhead());

        Plan alone =
                Planner.plan(Cycle.of(input, GroundMemory.ofSeason()).problem(), CycleTest.EFFORT);

        assertThat(alone).isEqualTo(Cycle.run(input, CycleTest.EFFORT).outlook().plan());
    }

    @Test
    void withoutANewOrderTheOneGivenOutStands() {
        CycleInput input = DryJuly.input(CycleTest.FIELDS, DryJuly.stormAhead());
        Outlook whole = Cycle.run(input, CycleTest.EFFORT).outlook();

        Outlook unordered = Cycle.of(input).unordered();

        assertThat(unordered.plan().items()).isEmpty();
        assertThat(unordered.fields())
                .extracting(f -> f.readiness().score())
                .isEqualTo(
                        whole.fields().stream().map(f -> f.readiness().score()).toList());
        assertThat(unordered.rain().keySet()).isEqualTo(whole.rain().keySet());
    }
}
