package rainward.brief.post;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** How long a message that nobody takes is carried about. */
class RetryScheduleTest {

    static final Instant DAWN = Instant.parse("2026-07-16T09:00:00Z");
    static final Instant NEXT_DAWN = DAWN.plus(RetrySchedule.TRIED_FOR);

    @Test
    void triesAreFrequentAtFirstAndHourlyLater() {
        List<Long> waitMinutes = new ArrayList<>();
        Instant now = DAWN;
        for (int tries = 1; tries <= 9; tries++) {
            Instant next = next(now, tries).orElseThrow();
            waitMinutes.add(Duration.between(now, next).toMinutes());
            now = next;
        }

        assertThat(waitMinutes).containsExactly(1L, 3L, 5L, 10L, 20L, 30L, 60L, 60L, 60L);
    }

    @Test
    void noTryComesAtOrAfterTheEnd() {
        Instant now = DAWN;
        int tries = 0;
        Optional<Instant> next = Optional.of(DAWN);
        while (next.isPresent()) {
            now = next.get();
            next = next(now, ++tries);
            assertThat(now).isBefore(NEXT_DAWN);
        }

        assertThat(Duration.between(now, NEXT_DAWN)).isLessThanOrEqualTo(Duration.ofHours(1));
        assertThat(tries).isBetween(25, 35);
    }

    @Test
    void aServerThatAsksForALongerWaitGetsIt() {
        Optional<Duration> asked = Optional.of(Duration.ofMinutes(15));

        assertThat(RetrySchedule.USUAL.next(DAWN, 1, asked, NEXT_DAWN))
                .contains(DAWN.plus(Duration.ofMinutes(15)));
        assertThat(RetrySchedule.USUAL.next(DAWN, 7, asked, NEXT_DAWN))
                .as("not sooner than the schedule")
                .contains(DAWN.plus(Duration.ofHours(1)));
    }

    private static Optional<Instant> next(Instant now, int tries) {
        return RetrySchedule.USUAL.next(now, tries, Optional.empty(), NEXT_DAWN);
    }
}
