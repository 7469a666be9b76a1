package rainward.daemon.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import rainward.weather.source.SourceStatus;

/** People read the farm's clock, not UTC. */
class LocalWordsTest {

    private static final ZoneId FARM = ZoneId.of("America/Detroit");

    @Test
    void momentsAreToldInTheDayOfTheFarm() {
        assertThat(LocalWords.in(FARM, "the interval from 2026-07-15T02:00:00Z overlaps"))
                .isEqualTo("the interval from Tue 14 Jul 22:00 overlaps");
        assertThat(LocalWords.in(FARM, "at 2026-11-01T05:30Z and at 2026-11-01T06:30:00.5Z"))
                .isEqualTo("at Sun 1 Nov 01:30 and at Sun 1 Nov 01:30");
    }

    @Test
    void whatOnlyLooksLikeAMomentStaysAsItWasSent() {
        assertThat(LocalWords.in(FARM, "'2026-99-15T02:00:00Z' is no time, $1 \\ neither"))
                .isEqualTo("'2026-99-15T02:00:00Z' is no time, $1 \\ neither");
    }

    @Test
    void statusSaysSinceWhen() {
        var down = new SourceStatus(
                "nws",
                SourceStatus.State.DOWN,
                Instant.parse("2026-07-15T12:20:00Z"),
                "nws takes no connections");

        assertThat(LocalWords.of(down, FARM))
                .isEqualTo("nws gives nothing since Wed 15 Jul 08:20: nws takes no connections");
    }
}
