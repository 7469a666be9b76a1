package rainward.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import rainward.farm.NearestName;

/**
 * What one line or feature tells, by column, with everything wrong noted under its place.
 *
 * @param place for the person, for instance {@code line 4}
 * @param cells by column in lower case; empty cells are left out
 * @param faults where wrong things are noted
 */
record Particulars(String place, Map<String, String> cells, Faults faults) {

    /** Short or other forms under which people's files have a column. */
    private static final Map<String, String> OTHER_NAMES = Map.of(
            "lat", "latitude",
            "lon", "longitude",
            "lng", "longitude",
            "long", "longitude",
            "ac", "acres",
            "ha", "hectares",
            "slope", "slope_percent");

    private static final int LONGEST = 80;

    static Particulars of(String place, Map<String, String> raw, Faults faults) {
        Map<String, String> cells = new TreeMap<>();
        raw.forEach((column, text) -> {
            if (!text.isBlank()) {
                cells.put(column(column), text.strip());
            }
        });
        return new Particulars(place, cells, faults);
    }

    /** Name of a column as the program knows it. */
    static String column(String written) {
        String name = written.strip().toLowerCase(Locale.ROOT).replace(' ', '_');
        return OTHER_NAMES.getOrDefault(name, name);
    }

    boolean has(String column) {
        return cells.containsKey(column);
    }

    void wrong(String column, String remedy) {
        String text = cells.get(column);
        faults.add(
                place,
                text == null ? column + " is missing" : column + " = \"" + text + "\"",
                remedy);
    }

    Optional<String> text(String column) {
        return Optional.ofNullable(cells.get(column));
    }

    /** A name; one that is missing, too long or unprintable is a fault. */
    Optional<String> name(String column) {
        Optional<String> name = text(column)
                .filter(text -> text.length() <= LONGEST)
                .filter(text -> text.chars().noneMatch(Character::isISOControl));
        if (name.isEmpty()) {
            wrong(column, "must be a name of 1 to " + LONGEST + " printable characters");
        }
        return name;
    }

    /** A number within bounds, where it is given; NaN and the like are not within any. */
    OptionalDouble number(String column, double least, double greatest) {
        if (!has(column)) {
            return OptionalDouble.empty();
        }
        try {
            double value = Double.parseDouble(cells.getOrDefault(column, ""));
            if (value >= least && value <= greatest) {
                return OptionalDouble.of(value);
            }
        } catch (NumberFormatException e) {
            // Told below, with the same remedy.
        }
        wrong(column, "must be a number from " + plain(least) + " to " + plain(greatest));
        return OptionalDouble.empty();
    }

    /** A number that must be given. */
    OptionalDouble required(String column, double least, double greatest) {
        if (!has(column)) {
            wrong(column, "must be a number from " + plain(least) + " to " + plain(greatest));
        }
        return number(column, least, greatest);
    }

    private static String plain(double bound) {
        return bound == Math.rint(bound) ? String.valueOf((long) bound) : String.valueOf(bound);
    }

    /** Names parted by semicolons or upright strokes. */
    List<String> list(String column) {
        return text(column).stream()
                .flatMap(text -> Stream.of(text.split("[;|]")))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
    }

    /** A name that must be one of those known. */
    Optional<String> oneOf(String column, String name, Iterable<String> known) {
        List<String> names = new ArrayList<>();
        known.forEach(names::add);
        Optional<String> exact = names.stream().filter(name::equals).findFirst();
        Optional<String> same =
                exact.or(() -> names.stream().filter(name::equalsIgnoreCase).findFirst());
        if (same.isEmpty()) {
            faults.add(
                    place,
                    column + " \"" + name + "\" is not known",
                    NearestName.of(name, names)
                            .map(near -> "the nearest is \"" + near + "\"")
                            .orElse("known are " + String.join(", ", names)));
        }
        return same;
    }
}
