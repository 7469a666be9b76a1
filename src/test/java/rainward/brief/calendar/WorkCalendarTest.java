package rainward.brief.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rainward.brief.BriefDays;
import rainward.brief.DaySketch;
import rainward.farm.Operation;

/** What calendars are told from order to order. */
class WorkCalendarTest {

    private final DaySketch day = BriefDays.dryStormInThreeDays();
    private final Instant dawn = day.at(0, "05:00");
    private final WorkCalendar first = WorkCalendar.EMPTY.after(day.brief().orders(), dawn);

    private WorkCalendar next(WorkCalendar before, Instant at) {
        return before.after(day.brief().orders(), at);
    }

    private static List<WorkEvent> cancelled(WorkCalendar calendar) {
        return calendar.events().stream()
                .filter(event -> event.version().cancelled())
                .toList();
    }

    private void dropKettle1() {
        day.items.removeIf(item -> item.place().field().equals("Kettle 1"));
    }

    @Test
    void theSameOrderChangesNoEvent() {
        assertThat(next(first, day.at(0, "06:00"))).isEqualTo(first);
    }

    @Test
    void workThatMovesKeepsItsUidAndCountsUp() {
        day.items.replaceAll(item -> item);
        day.items.removeIf(item -> item.place().field().equals("Church East"));
        day.seed(5, "Church East", 0.52, day.span(2, "08:00", "09:20"));

        WorkCalendar after = next(first, day.at(0, "06:00"));

        assertThat(after.events())
                .extracting(WorkEvent::uid)
                .hasSameElementsAs(first.events().stream().map(WorkEvent::uid).toList());
        assertThat(after.events())
                .filteredOn(event -> !first.events().contains(event))
                .singleElement()
                .satisfies(event -> {
                    assertThat(event.place().field()).isEqualTo("Church East");
                    assertThat(event.version().sequence())
                            .isEqualTo(first.events().get(0).version().sequence() + 60);
                });
    }

    @Test
    void workThatFellOutIsCancelledOnceAndForgottenWhenItsHoursAreOver() {
        dropKettle1();
        WorkCalendar after = next(first, day.at(0, "06:00"));
        WorkCalendar later = next(after, day.at(0, "12:00"));

        assertThat(cancelled(after)).hasSize(2);
        assertThat(cancelled(later)).isEqualTo(cancelled(after));
        assertThat(cancelled(next(later, day.at(3, "12:00")))).isEmpty();
    }

    @Test
    void workThatComesBackIsTakenUpUnderItsOwnName() {
        DaySketch whole = BriefDays.dryStormInThreeDays();
        dropKettle1();
        WorkCalendar without = next(first, day.at(0, "06:00"));
        WorkCalendar back = without.after(whole.brief().orders(), day.at(0, "06:00"));

        assertThat(cancelled(back)).isEmpty();
        assertThat(back.events()).extracting(WorkEvent::uid).doesNotHaveDuplicates();
        assertThat(back.events())
                .filteredOn(event -> event.place().field().equals("Kettle 1"))
                .allSatisfy(event -> assertThat(event.version().sequence())
                        .isGreaterThan(cancelled(without).get(0).version().sequence()));
    }

    @Test
    void workThatHasBegunIsHistoryAndNotCancelled() {
        dropKettle1();

        assertThat(cancelled(next(first, day.at(0, "11:00"))))
                .extracting(event -> event.stage().operation())
                .containsExactly(Operation.SEED);
    }

    @Test
    void aPersonSeesTheWorkOfTheirMachineOnly() {
        assertThat(first.of(Set.of("roller")).events())
                .extracting(event -> event.stage().stage())
                .containsExactly("firm");
    }
}
