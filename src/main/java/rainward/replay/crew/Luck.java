package rainward.replay.crew;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import rainward.farm.Machine;
import rainward.farm.Window;

/**
 * What no policy can help: breakdowns by the calendar and a pace that differs from field to field.
 * The same for every policy of a season.
 */
final class Luck {

    /** A machine breaks once in so many hours of the crew's day; common practice, no source [h]. */
    private static final double HOURS_BETWEEN_BREAKDOWNS = 80;

    private static final double LEAST_REPAIR_HOURS = 2;
    private static final double MOST_REPAIR_HOURS = 10;

    /** Work rates differ by so much from the figure reckoned with; common practice, no source. */
    private static final double PACE_SPREAD = 0.15;

    private final Map<String, List<Window>> down = new HashMap<>();
    private final long seed;

    Luck(List<Machine> machines, Window season, long seed) {
        this.seed = seed;
        for (Machine machine : machines) {
            down.put(machine.name(), breakdowns(machine.name(), season));
        }
    }

    private List<Window> breakdowns(String machine, Window season) {
        SplittableRandom random = new SplittableRandom(seed * 31 + machine.hashCode());
        List<Window> all = new ArrayList<>();
        Instant at = season.from();
        while (at.isBefore(season.to())) {
            // Nights count as well, so a working hour of a 12-hour day stands for two.
            double hours = -Math.log(1 - random.nextDouble()) * HOURS_BETWEEN_BREAKDOWNS * 2;
            at = at.plus(Duration.ofMinutes((long) (60 * hours)));
            Instant mended = at.plus(Duration.ofMinutes(
                    (long) (60 * random.nextDouble(LEAST_REPAIR_HOURS, MOST_REPAIR_HOURS))));
            all.add(new Window(at, mended));
        }
        return all;
    }

    boolean broken(String machine, Instant now) {
        return down.getOrDefault(machine, List.of()).stream().anyMatch(w -> w.contains(now));
    }

    /** Factor on the time that a stage takes on a field. */
    double slowness(String field, String stage) {
        SplittableRandom random =
                new SplittableRandom(seed * 37 + field.hashCode() * 101L + stage.hashCode());
        return Math.exp(PACE_SPREAD * random.nextGaussian());
    }
}
