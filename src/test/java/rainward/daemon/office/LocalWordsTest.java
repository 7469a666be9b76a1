package rainward.daemon.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import rainward.farm.DayClock;
import rainward.farm.UnitSystem;
import rainward.weather.source.SourceStatus;

/** People read the farm's clock, not UTC. */
class LocalWordsTest {

    private static final DayClock FARM =
            new DayClock(ZoneId.of("America/Detroit"), UnitSystem.US_CUSTOMARY);

    @Test
    void momentsAreToldInTheDayOfTheFarm() {
        assertThat(LocalWords.in(FARM, "the interval from 2026-07-15T02:00:00Z overlaps"))
                .isEqualTo("the interval from Tue, Jul 14 10:00 pm overlaps");
        assertThat(LocalWords.in(FARM, "at 2026-11-01T05:30Z and at 2026-11-01T06:30:00.5Z"))
                .isEqualTo("at Sun, Nov 1 1:30 am EDT and at Sun, Nov 1 1:30 am EST");
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
                .isEqualTo("nws gives nothing since Wed, Jul 15 8:20 am: nws takes no connections");
    }
}
