package rainward.farm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Times as they are shown, on ordinary days and on the two nights when clocks change. */
class DayClockTest {

    private static final ZoneId DETROIT = ZoneId.of("America/Detroit");

    private static final DayClock US = new DayClock(DETROIT, UnitSystem.US_CUSTOMARY);

    private static final DayClock METRIC = new DayClock(DETROIT, UnitSystem.METRIC);

    private static Window window(String from, String to) {
        return new Window(Instant.parse(from), Instant.parse(to));
    }

    @ParameterizedTest
    @CsvSource({
        "2026-07-16T10:30:00Z, 6:30 am, 06:30",
        "2026-07-16T16:00:00Z, noon, 12:00",
        "2026-07-16T16:05:00Z, 12:05 pm, 12:05",
        "2026-07-17T04:00:00Z, midnight, 00:00",
        "2026-07-17T04:10:00Z, 12:10 am, 00:10",
        "2026-12-16T11:30:00Z, 6:30 am, 06:30"
    })
    void timeOfDayIs(Instant at, String us, String metric) {
        assertThat(US.time(at)).isEqualTo(us);
        assertThat(METRIC.time(at)).isEqualTo(metric);
    }

    @ParameterizedTest
    @CsvSource({
        "2026-07-16T10:30:00Z, 2026-07-16T12:10:00Z, 6:30-8:10 am, 06:30-08:10",
        "2026-07-16T13:00:00Z, 2026-07-16T17:10:00Z, 9:00 am-1:10 pm, 09:00-13:10",
        "2026-07-16T13:00:00Z, 2026-07-16T16:00:00Z, 9:00 am-noon, 09:00-12:00",
        "2026-07-17T00:00:00Z, 2026-07-17T04:00:00Z, 8:00 pm-midnight, 20:00-00:00",
        "2026-07-17T02:00:00Z, 2026-07-17T06:00:00Z, 10:00 pm-Fri 2:00 am, 22:00-Fri 02:00"
    })
    void stretchIs(String from, String to, String us, String metric) {
        assertThat(US.span(window(from, to))).isEqualTo(us);
        assertThat(METRIC.span(window(from, to))).isEqualTo(metric);
    }

    @Test
    void daysAreNamedTheWayTheReaderDoes() {
        LocalDate day = LocalDate.of(2026, 7, 6);

        assertThat(US.day(day)).isEqualTo("Mon, Jul 6");
        assertThat(METRIC.day(day)).isEqualTo("Mon 6 Jul");
        assertThat(METRIC.longDay(day)).isEqualTo("Monday 6 July");
    }

    /** 1 November 2026: 1:30 comes twice, first in summer time. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            2026-07-19T17:00:00Z | Sun 1:00 pm                 | Sun 13:00
            2026-07-20T17:00:00Z | Mon, Jul 20 1:00 pm         | Mon 20 Jul 13:00
            2026-07-07T17:00:00Z | Tue 1:00 pm                 | Tue 13:00
            2026-07-06T17:00:00Z | Mon, Jul 6 1:00 pm          | Mon 6 Jul 13:00
            2027-07-16T10:30:00Z | Fri, Jul 16, 2027 6:30 am   | Fri 16 Jul 2027 06:30
            """)
    void aMomentIsSaidSoThatItsDayIsKnown(Instant at, String us, String metric) {
        Instant monday = Instant.parse("2026-07-13T12:00:00Z");

        assertThat(US.near(at, monday)).isEqualTo(us);
        assertThat(METRIC.near(at, monday)).isEqualTo(metric);
    }

    @Nested
    class WhenClocksGoBack {

        @Test
        void theHourThatComesTwiceSaysWhichOne() {
            assertThat(US.time(Instant.parse("2026-11-01T05:30:00Z"))).isEqualTo("1:30 am EDT");
            assertThat(US.time(Instant.parse("2026-11-01T06:30:00Z"))).isEqualTo("1:30 am EST");
            assertThat(US.time(Instant.parse("2026-11-01T07:30:00Z"))).isEqualTo("2:30 am");
        }

        @Test
        void aStretchOverTheChangeSaysBothEnds() {
            assertThat(US.span(window("2026-11-01T05:30:00Z", "2026-11-01T06:30:00Z")))
                    .isEqualTo("1:30 am EDT-1:30 am EST");
        }

        @Test
        void theDayHas25Hours() {
            assertThat(US.wholeDay(LocalDate.of(2026, 11, 1)).length().toHours())
                    .isEqualTo(25);
        }
    }

    /** 8 March 2026: 2:00 to 3:00 does not exist. */
    @Nested
    class WhenClocksGoForward {

        @Test
        void aStretchOverTheGapShowsTheWallClock() {
            assertThat(US.span(window("2026-03-08T06:30:00Z", "2026-03-08T07:30:00Z")))
                    .isEqualTo("1:30-3:30 am");
        }

        @Test
        void theDayHas23Hours() {
            assertThat(US.wholeDay(LocalDate.of(2026, 3, 8)).length().toHours()).isEqualTo(23);
        }
    }
}
