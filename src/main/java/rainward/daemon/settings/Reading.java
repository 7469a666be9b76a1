package rainward.daemon.settings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Pattern;
import rainward.daemon.settings.text.KeyLines;
import rainward.farm.UnitSystem;

/** One reading of the settings file: collects every fault instead of stopping at the first. */
final class Reading {

    private static final Pattern SECRET =
            Pattern.compile("password|secret|token|(^|[._])key$", Pattern.CASE_INSENSITIVE);

    private final String file;
    private final KeyLines lines;
    private final List<Fault> faults = new ArrayList<>();
    private final List<Fault> warnings = new ArrayList<>();
    private final SortedSet<String> asked = new TreeSet<>();
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    Reading(String file, KeyLines lines) {
        this.file = file;
        this.lines = lines;
    }

    UnitSystem units() {
        return units;
    }

    /** Units of plain numbers from here on. */
    void units(UnitSystem chosen) {
        units = chosen;
    }

    void fault(String key, String found, String remedy) {
        faults.add(new Fault(file, lines.of(key), key, found, remedy));
    }

    void warn(String key, String found, String remedy) {
        warnings.add(new Fault(file, lines.of(key), key, found, remedy));
    }

    /** A value that is there and cannot be taken. */
    void wrong(String key, String value, String remedy) {
        fault(key, "= " + shown(key, value), remedy);
    }

    private static String shown(String key, String value) {
        if (SECRET.matcher(key).find()) {
            return "(not shown)";
        }
        return value.length() <= 60 ? value : value.substring(0, 57) + "...";
    }

    /** Remembers that a key is one that the program knows. */
    void ask(String key) {
        asked.add(key.replaceAll("\\[\\d+]", "[]").toLowerCase(Locale.ROOT));
    }

    /** Every key that was asked for, entries of lists written {@code []}. */
    SortedSet<String> asked() {
        return asked;
    }

    List<Fault> faults() {
        return faults.stream().sorted(Comparator.comparingInt(Fault::line)).toList();
    }

    List<Fault> warnings() {
        return warnings;
    }
}
