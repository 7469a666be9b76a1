package rainward.feed.reading;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rainward.farm.Window;

/**
 * A value that holds over a stretch of time.
 *
 * @param window the stretch
 * @param value in the unit of its layer, SI
 */
public record Spell(Window window, double value) {

    /** In order of time, without overlap; what overlaps an earlier one is left out and named. */
    public static List<Spell> inOrder(String layer, List<Spell> spells, Notes notes) {
        List<Spell> sorted = new ArrayList<>(spells);
        sorted.sort(Comparator.comparing(s -> s.window().from()));
        if (!sorted.equals(spells)) {
            notes.say(layer + ": its intervals were not in order of time, put in order");
        }
        List<Spell> kept = new ArrayList<>();
        for (Spell spell : sorted) {
            if (kept.isEmpty() || !spell.startsBeforeEndOf(kept.get(kept.size() - 1))) {
                kept.add(spell);
            } else {
                notes.leftOut(layer, "the interval from " + spell.window().from() + " overlaps");
            }
        }
        return kept;
    }

    private boolean startsBeforeEndOf(Spell other) {
        return window.from().isBefore(other.window.to());
    }

    /**
     * Value of each hour: the one that holds in the middle of it; NaN where none does.
     *
     * @param spells in order of time
     * @param start of the first hour
     * @param hours how many
     */
    public static double[] hourly(List<Spell> spells, Instant start, int hours) {
        double[] values = new double[hours];
        int next = 0;
        for (int h = 0; h < hours; h++) {
            Instant middle = start.plus(Duration.ofMinutes(60L * h + 30));
            while (next < spells.size() && !spells.get(next).window().to().isAfter(middle)) {
                next++;
            }
            boolean holds = next < spells.size() && spells.get(next).window().contains(middle);
            values[h] = holds ? spells.get(next).value() : Double.NaN;
        }
        return values;
    }
}
