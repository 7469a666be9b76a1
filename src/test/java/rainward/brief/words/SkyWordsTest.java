package rainward.brief.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import rainward.brief.RainPanel;
import rainward.cycle.RainPicture.Bar;
import rainward.farm.UnitSystem;
import rainward.farm.Window;

/** Rain in words. */
class SkyWordsTest {

    private static final Instant FROM = Instant.parse("2026-07-16T10:00:00Z");

    private static String told(UnitSystem units, double meanMm, double p90Mm) {
        Window six = new Window(FROM, FROM.plus(Duration.ofHours(6)));
        return new SkyWords(new Reader(ZoneId.of("America/Detroit"), units))
                .rain(new RainPanel(
                        "Mill Pond", List.of(new Bar(six, 0.3, meanMm, p90Mm, 0)), List.of()));
    }

    @Test
    void amountsAreRounded() {
        assertThat(told(UnitSystem.US_CUSTOMARY, 5.2, 12.5))
                .endsWith("0.2 in expected, one time in ten over 0.5 in");
    }

    @Test
    void nothingIsSaidToBeOverZero() {
        assertThat(told(UnitSystem.US_CUSTOMARY, 0.4, 1.1))
                .endsWith("less than 0.1 in expected, nine times in ten less than 0.1 in");
        assertThat(told(UnitSystem.METRIC, 0.3, 1.1))
                .endsWith("less than 1 mm expected, one time in ten over 1 mm");
    }
}
