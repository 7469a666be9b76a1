package rainward.weather.rain;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rainward.farm.Window;

/**
 * How far one chance of rain reaches. Services merge equal neighbours into one run, so a chance
 * over more than six hours is no chance of the whole run: it holds for each of the pieces that 00,
 * 06, 12 and 18 UTC cut it into, the raster of nearly all amounts of the US service (622 of 825
 * recorded intervals; its hourly ones are never that long).
 */
public final class ChanceRuns {

    /** Longest period with one chance [h]. */
    public static final int LONGEST_H = 6;

    private static final Duration LONGEST = Duration.ofHours(LONGEST_H);

    private ChanceRuns() {}

    /** Periods of a run, in order; itself where it is no longer than six hours. */
    public static List<Window> periods(Window run) {
        if (run.length().compareTo(LONGEST) <= 0) {
            return List.of(run);
        }
        List<Window> periods = new ArrayList<>();
        Instant from = run.from();
        while (from.isBefore(run.to())) {
            Instant cut = nextCut(from);
            Instant to = cut.isBefore(run.to()) ? cut : run.to();
            periods.add(new Window(from, to));
            from = to;
        }
        return periods;
    }

    private static Instant nextCut(Instant from) {
        long block = LONGEST.toSeconds();
        return Instant.ofEpochSecond((Math.floorDiv(from.getEpochSecond(), block) + 1) * block);
    }
}
