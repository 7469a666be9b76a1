package rainward.feed.reading;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import rainward.farm.Window;

/**
 * Values at instants, as model services give them; an hour between two of them holds the value in
 * its middle on the straight line from one to the other, over at most six hours.
 */
public final class Moments {

    private static final Duration LONGEST_STEP = Duration.ofHours(6);
    private static final long HOUR = 3600;

    private final SortedMap<Instant, Double> values = new TreeMap<>();

    public void put(Instant at, double value) {
        values.putIfAbsent(at, value);
    }

    /** Hours between the first and the last instant; none where the step is too long. */
    public List<Spell> hours() {
        List<Spell> spells = new ArrayList<>();
        Instant from = null;
        for (Instant to : values.keySet()) {
            if (from != null && Duration.between(from, to).compareTo(LONGEST_STEP) <= 0) {
                between(from, to, spells);
            }
            from = to;
        }
        return spells;
    }

    private void between(Instant from, Instant to, List<Spell> spells) {
        double seconds = Duration.between(from, to).toSeconds();
        for (long s = 0; s + HOUR <= seconds; s += HOUR) {
            double share = (s + HOUR / 2.0) / seconds;
            double value = at(from) + (at(to) - at(from)) * share;
            Instant start = from.plusSeconds(s);
            spells.add(new Spell(new Window(start, start.plusSeconds(HOUR)), value));
        }
    }

    private double at(Instant instant) {
        return values.getOrDefault(instant, Double.NaN);
    }
}
