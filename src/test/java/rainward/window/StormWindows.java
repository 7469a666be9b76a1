package rainward.window;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.TreeSet;

/** Windows as a test wants them: one property, one field that fits, rain on Thursday afternoon. */
final class StormWindows {

    static final ZoneId ZONE = ZoneId.of("America/Detroit");

    /** Tuesday 08:00 in the farm's zone. */
    static final Instant TUESDAY = Instant.parse("2026-07-14T12:00:00Z");

    /** Thursday 14:00. */
    static final Instant THURSDAY_RAIN = Instant.parse("2026-07-16T18:00:00Z");

    static final WindowRules RULES = WindowRules.usual(ZONE);

    private StormWindows() {}

    static StormWindow window(
            double chance, Instant middle, List<String> fits, List<String> leave) {
        Instant early = middle.minus(Duration.ofHours(4));
        return new StormWindow(
                "seen",
                new TreeSet<>(List.of("Creek")),
                chance,
                new StormWindow.Arrival(early, middle, middle.plus(Duration.ofHours(5))),
                new StormWindow.Amount(6, 14, 25),
                0.2,
                fits.stream().map(f -> fit(f, early)).toList(),
                leave);
    }

    private static StormWindow.Fit fit(String field, Instant early) {
        return new StormWindow.Fit(
                field, early.minus(Duration.ofHours(20)), early.minus(Duration.ofHours(3)), 0.7);
    }

    static StormWindow likely() {
        return window(0.7, THURSDAY_RAIN, List.of("F1"), List.of("F2"));
    }
}
