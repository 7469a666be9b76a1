package rainward.brief.calendar;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.brief.Brief;
import rainward.brief.BriefDays;
import rainward.brief.DaySketch;
import rainward.farm.UnitSystem;

/** The calendar, read by a library that did not write it. */
class DayCalendarTest {

    private static List<VEvent> events(Brief brief) throws Exception {
        Calendar calendar = new CalendarBuilder()
                .build(new StringReader(DayCalendar.of(brief, UnitSystem.US_CUSTOMARY)));
        assertThat(calendar.validate().getEntries()).isEmpty();
        return calendar.getComponents("VEVENT");
    }

    private static Map<String, VEvent> byUid(Brief brief) throws Exception {
        return events(brief).stream()
                .collect(Collectors.toMap(e -> e.getUid().orElseThrow().getValue(), e -> e));
    }

    private static int sequence(VEvent event) {
        return requireNonNull(event.getSequence()).getSequenceNo();
    }

    @Test
    void holdsEveryStageOfTodaysFieldsWithItsHours() throws Exception {
        DaySketch day = BriefDays.dryStormInThreeDays();

        List<VEvent> events = events(day.brief());

        assertThat(events).hasSize(8);
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

    /** RFC 5545 3.8.7.4: a higher SEQUENCE of the same UID takes the place of the lower one. */
    @Test
    void aLaterBriefMovesEventsAndDoublesNone() throws Exception {
        DaySketch later = BriefDays.dryStormInThreeDays().writtenAfter(Duration.ofHours(3));

        Map<String, VEvent> before = byUid(BriefDays.dryStormInThreeDays().brief());
        Map<String, VEvent> after = byUid(later.brief());

        assertThat(after.keySet()).isEqualTo(before.keySet());
        after.forEach((uid, event) -> assertThat(sequence(event))
                .isGreaterThan(sequence(requireNonNull(before.get(uid)))));
    }

    @Test
    void twoStretchesOfOneStageAreTwoEvents() throws Exception {
        assertThat(events(BriefDays.day("failed-stands").brief())).hasSize(3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"hostile-names", "clocks-go-back", "dry-storm-in-three-days"})
    void noLineIsLongerThan75OctetsAndAllEndInCrLf(String name) {
        String text = DayCalendar.of(BriefDays.day(name).brief(), UnitSystem.METRIC);

        assertThat(text.split("\r\n"))
                .allSatisfy(line -> assertThat(line.getBytes(StandardCharsets.UTF_8).length)
                        .as(line)
                        .isLessThanOrEqualTo(75));
        assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
    }

    @Test
    void namesWithSignsOfTheFormatComeBackAsTheyWere() throws Exception {
        List<VEvent> events = events(BriefDays.day("hostile-names").brief());

        assertThat(events)
                .extracting(e -> requireNonNull(e.getSummary()).getValue())
                .contains("seed: mix, with; commas\\and backslash, Mill\\r\\nBcc: all@example.org");
    }
}
