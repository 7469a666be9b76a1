package rainward.brief.calendar;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.brief.BriefDays;
import rainward.brief.DaySketch;
import rainward.farm.UnitSystem;

/** The calendar, read by a library that did not write it. */
class CalendarTextTest {

    private static WorkCalendar work(DaySketch day) {
        return WorkCalendar.EMPTY.after(
                day.brief().orders(), day.brief().heading().written().at());
    }

    private static List<VEvent> events(WorkCalendar work) throws Exception {
        Calendar calendar = new CalendarBuilder()
                .build(new StringReader(CalendarText.of(work, UnitSystem.US_CUSTOMARY)));
        assertThat(calendar.validate().getEntries()).isEmpty();
        return calendar.getComponents("VEVENT");
    }

    @Test
    void holdsEveryStageOfTheOrderWithItsHours() throws Exception {
        DaySketch day = BriefDays.dryStormInThreeDays();

        List<VEvent> events = events(work(day));

        assertThat(events).hasSize(11);
        VEvent first = events.stream()
                .min(Comparator.comparing(e -> (Instant) start(e)))
                .orElseThrow();
        assertThat(start(first)).isEqualTo(Instant.parse("2026-07-16T10:30:00Z"));
        assertThat(requireNonNull(first.getSummary()).getValue()).isEqualTo("till, Mill 3");
        assertThat(requireNonNull(first.getLocation()).getValue()).isEqualTo("Mill Pond");
    }

    private static Instant start(VEvent event) {
        return Instant.from(requireNonNull(event.getDateTimeStart()).getDate());
    }

    /** RFC 5545 3.8.1.11 and 3.8.7.4: the same UID, a higher SEQUENCE, cancelled. */
    @Test
    void workThatFellOutIsCancelledByName() throws Exception {
        DaySketch day = BriefDays.dryStormInThreeDays();
        WorkCalendar before = work(day);
        day.items.removeIf(item -> item.place().field().equals("Kettle 1"));
        WorkCalendar after = before.after(day.brief().orders(), day.at(0, "05:30"));

        List<VEvent> cancelled = events(after).stream()
                .filter(e -> requireNonNull(e.getStatus()).getValue().equals("CANCELLED"))
                .toList();

        assertThat(cancelled)
                .extracting(e -> requireNonNull(e.getSummary()).getValue())
                .containsExactly("till, Kettle 1", "seed: three brassicas, Kettle 1");
        assertThat(cancelled)
                .allSatisfy(e -> assertThat(requireNonNull(e.getSequence()).getSequenceNo())
                        .isGreaterThan(before.events().get(0).version().sequence()));
        assertThat(events(after)).hasSameSizeAs(before.events());
    }

    @Test
    void twoStretchesOfOneStageAreTwoEvents() throws Exception {
        assertThat(events(work(BriefDays.day("failed-stands")))).hasSize(3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"hostile-names", "clocks-go-back", "dry-storm-in-three-days"})
    void noLineIsLongerThan75OctetsAndAllEndInCrLf(String name) {
        String text = CalendarText.of(work(BriefDays.day(name)), UnitSystem.METRIC);

        assertThat(text.split("\r\n"))
                .allSatisfy(line -> assertThat(line.getBytes(StandardCharsets.UTF_8).length)
                        .as(line)
                        .isLessThanOrEqualTo(75));
        assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
    }

    @Test
    void namesWithSignsOfTheFormatComeBackAsTheyWere() throws Exception {
        List<VEvent> events = events(work(BriefDays.day("hostile-names")));

        assertThat(events)
                .extracting(e -> requireNonNull(e.getSummary()).getValue())
                .contains("seed: mix, with; commas\\and backslash, Mill\\r\\nBcc: all@example.org");
    }
}
