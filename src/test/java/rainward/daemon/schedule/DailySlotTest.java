package rainward.daemon.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class DailySlotTest {

    static final DailySlot BEFORE_DAWN =
            new DailySlot(LocalTime.of(5, 0), ZoneId.of("America/Detroit"));
    static final DailySlot IN_THE_GAP =
            new DailySlot(LocalTime.of(2, 30), ZoneId.of("America/Detroit"));

    @Test
    void theSlotIsALocalTimeOnEitherSideOfTheClockChange() {
        assertThat(BEFORE_DAWN.on(LocalDate.of(2026, 3, 7))).isEqualTo("2026-03-07T10:00:00Z");
        assertThat(BEFORE_DAWN.on(LocalDate.of(2026, 3, 8))).isEqualTo("2026-03-08T09:00:00Z");
    }

    @Test
    void aTimeThatTheSpringNightSkipsComesAfterTheGap() {
        assertThat(IN_THE_GAP.on(LocalDate.of(2026, 3, 8))).isEqualTo("2026-03-08T07:30:00Z");
    }

    @Test
    void aTimeThatTheAutumnNightRepeatsCountsAtItsFirstComing() {
        DailySlot twice = new DailySlot(LocalTime.of(1, 30), ZoneId.of("America/Detroit"));
        assertThat(twice.on(LocalDate.of(2026, 11, 1))).isEqualTo("2026-11-01T05:30:00Z");
    }

    @Test
    void beforeTheSlotYesterdayIsTheLatestDayAndFromItOnToday() {
        assertThat(BEFORE_DAWN.latestDay(Instant.parse("2026-07-13T08:59:59Z")))
                .isEqualTo("2026-07-12");
        assertThat(BEFORE_DAWN.latestDay(Instant.parse("2026-07-13T09:00:00Z")))
                .isEqualTo("2026-07-13");
    }
}
