package rainward.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.junit.jupiter.api.Test;

class QuietHoursTest {

    private static final ZoneId FARM = ZoneId.of("America/Detroit");

    private static final QuietHours NIGHT =
            new QuietHours(LocalTime.of(21, 0), LocalTime.of(5, 30));

    private static ZonedDateTime local(String time) {
        return ZonedDateTime.of(LocalDateTime.parse(time), FARM);
    }

    @Test
    void nightEndsInTheNextMorning() {
        Instant morning = local("2026-07-17T05:30").toInstant();

        assertThat(NIGHT.endAt(local("2026-07-16T21:00"))).contains(morning);
        assertThat(NIGHT.endAt(local("2026-07-17T05:29"))).contains(morning);
        assertThat(NIGHT.endAt(local("2026-07-17T05:30"))).isEmpty();
        assertThat(NIGHT.endAt(local("2026-07-17T20:59"))).isEmpty();
    }

    @Test
    void noonRestEndsOnItsDay() {
        var noon = new QuietHours(LocalTime.of(12, 0), LocalTime.of(13, 0));

        assertThat(noon.endAt(local("2026-07-16T12:30")))
                .contains(local("2026-07-16T13:00").toInstant());
        assertThat(noon.endAt(local("2026-07-16T13:00"))).isEmpty();
        assertThat(noon.endAt(local("2026-07-16T11:59"))).isEmpty();
    }

    @Test
    void sameHourAtBothEndsIsNoQuiet() {
        assertThat(QuietHours.NEVER.endAt(local("2026-07-16T00:00"))).isEmpty();
        assertThat(QuietHours.NEVER.endAt(local("2026-07-16T12:00"))).isEmpty();
    }

    /** On March 8, 2026 the farm's clocks go from 2:00 to 3:00: half past two does not come. */
    @Test
    void endThatTheSpringNightSkipsComesAfterTheGap() {
        var half = new QuietHours(LocalTime.of(22, 0), LocalTime.of(2, 30));

        assertThat(half.endAt(local("2026-03-07T23:00")))
                .contains(Instant.parse("2026-03-08T07:30:00Z"));
    }
}
