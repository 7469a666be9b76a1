package rainward.brief.words;

import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import rainward.farm.DayClock;
import rainward.farm.UnitSystem;

/**
 * Whoever reads: where, and in which units.
 *
 * @param clock days and times as they say them
 * @param units they read
 */
public record Reader(DayClock clock, UnitSystem units) {

    public Reader(ZoneId zone, UnitSystem units) {
        this(new DayClock(zone, units), units);
    }

    /** For instance {@code 71%}. */
    public static String percent(double chance) {
        return Math.round(100 * chance) + "%";
    }

    /** Whole hours from ten on, else tenths. */
    public static String hours(Duration duration) {
        double hours = duration.toMinutes() / 60.0;
        String shown = hours >= 10
                ? String.valueOf(Math.round(hours))
                : String.format(Locale.ROOT, "%.1f", hours).replace(".0", "");
        return shown + (shown.equals("1") ? " hour" : " hours");
    }

    /** To the minute, for instance {@code 5 h 12 min}. */
    public static String span(Duration duration) {
        long hours = duration.toHours();
        long minutes = duration.toMinutesPart();
        String rest = minutes + " min";
        return hours == 0 ? rest : hours + " h" + (minutes == 0 ? "" : " " + rest);
    }

    public static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** For instance {@code Mill 3, Mill 5 and Oak 2}. */
    public static String and(List<String> names) {
        int last = names.size() - 1;
        return last < 1
                ? String.join("", names)
                : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    /** A range of rain ahead, for instance {@code 0.3 to 1.2 in}. */
    public String rainRange(double fromMm, double toMm) {
        return range(units.roughRain(fromMm), units.roughRain(toMm));
    }

    /** Two quantities of one unit, the unit once. */
    public static String range(String from, String to) {
        return from.equals(to) ? to : from.substring(0, from.indexOf(' ')) + " to " + to;
    }
}
