package rainward.daemon.settings;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import rainward.farm.NearestName;

/**
 * One table of the file. Each question names a key and what would be right; a faulty answer is
 * noted and something harmless given back, so that the reading goes on to the next fault. Settings
 * with a fault are never used.
 */
final class Section {

    /** Stands for a name that is missing. */
    static final String NAMELESS = "?";

    private final Reading reading;
    private final String path;
    private final JsonNode node;
    private final SortedSet<String> known = new TreeSet<>();

    Section(Reading reading, String path, JsonNode node) {
        this.reading = reading;
        this.path = path;
        this.node = node;
    }

    Reading reading() {
        return reading;
    }

    String path(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    boolean has(String key) {
        return !ask(key).isMissingNode();
    }

    JsonNode ask(String key) {
        known.add(key);
        reading.ask(path(key));
        return node.path(key);
    }

    void wrong(String key, String remedy) {
        JsonNode value = node.path(key);
        if (value.isMissingNode()) {
            reading.fault(path(key), "is missing", remedy);
        } else {
            reading.wrong(path(key), shown(value), remedy);
        }
    }

    /** A table may hold a secret under any name, so that it is not shown. */
    private static String shown(JsonNode value) {
        boolean tables = value.isObject() || value.isArray() && value.path(0).isObject();
        return tables ? "(a table)" : value.toString();
    }

    /** Says what is unknown here; called once all known keys have been asked for. */
    void end() {
        node.fieldNames().forEachRemaining(key -> {
            if (!known.contains(key)) {
                reading.wrong(path(key), shown(node.path(key)), unknown(key));
            }
        });
    }

    private String unknown(String key) {
        if (key.equals("password") || key.equals("secret")) {
            return "a secret does not belong here: put it into a file that only you can read and"
                    + " name that in " + key + "_file, or an environment variable in " + key
                    + "_env";
        }
        return "there is no such key, "
                + NearestName.of(key, known)
                        .map(near -> "the nearest is \"" + near + "\"")
                        .orElse("known here are " + String.join(", ", known));
    }

    Section table(String key) {
        JsonNode value = ask(key);
        if (!value.isMissingNode() && !value.isObject()) {
            wrong(key, "must be a table: [" + path(key) + "]");
        }
        return new Section(reading, path(key), value);
    }

    List<Section> tables(String key) {
        JsonNode value = ask(key);
        if (value.isMissingNode()) {
            return List.of();
        }
        if (!value.isArray()) {
            wrong(key, "must be a list of tables: [[" + path(key) + "]]");
            return List.of();
        }
        List<Section> entries = new ArrayList<>();
        for (JsonNode entry : value) {
            entries.add(new Section(reading, path(key) + "[" + (entries.size() + 1) + "]", entry));
        }
        return entries;
    }

    String name(String key) {
        return text(key, "must be a name of 1 to 80 printable characters");
    }

    String text(String key, String remedy) {
        JsonNode value = ask(key);
        if (value.isTextual() && printable(value.textValue())) {
            return value.textValue().strip();
        }
        wrong(key, remedy);
        return NAMELESS;
    }

    private static boolean printable(String text) {
        return !text.isBlank()
                && text.length() <= 80
                && text.chars().noneMatch(Character::isISOControl);
    }

    Optional<String> maybeText(String key, String remedy) {
        return has(key) ? Optional.of(text(key, remedy)) : Optional.empty();
    }

    boolean flag(String key, boolean usual) {
        JsonNode value = ask(key);
        if (!value.isMissingNode() && !value.isBoolean()) {
            wrong(key, "must be true or false");
        }
        return value.asBoolean(usual);
    }

    long whole(String key, Bounds.Whole bounds) {
        JsonNode value = ask(key);
        if (value.isMissingNode()) {
            return bounds.usual();
        }
        if (value.isIntegralNumber()
                && value.canConvertToLong()
                && value.longValue() >= bounds.least()
                && value.longValue() <= bounds.most()) {
            return value.longValue();
        }
        wrong(key, "must be a whole number from " + bounds.least() + " to " + bounds.most());
        return bounds.least();
    }

    double number(String key, Bounds.Real bounds) {
        JsonNode value = ask(key);
        if (value.isMissingNode() && bounds.usual().isPresent()) {
            return bounds.usual().get();
        }
        return within(key, asNumber(value), bounds, "must be a number from %s to %s");
    }

    /** A share: {@code 0.6} or {@code "60 %"}. */
    double share(String key, Bounds.Real bounds) {
        JsonNode value = ask(key);
        if (value.isMissingNode() && bounds.usual().isPresent()) {
            return bounds.usual().get();
        }
        Optional<Double> share =
                value.isTextual() ? Written.share(value.textValue()) : asNumber(value);
        return within(key, share, bounds, "must be a share from %s to %s, or a percentage");
    }

    private double within(String key, Optional<Double> number, Bounds.Real bounds, String remedy) {
        return number.filter(n -> n >= bounds.least() && n <= bounds.most()).orElseGet(() -> {
            wrong(key, String.format(Locale.ROOT, remedy, bounds.least(), bounds.most()));
            return bounds.least();
        });
    }

    private static Optional<Double> asNumber(JsonNode value) {
        return value.isNumber() && Double.isFinite(value.doubleValue())
                ? Optional.of(value.doubleValue())
                : Optional.empty();
    }

    /** A plain number is in the units of the farm, a text carries its unit. */
    double amount(String key, Bounds.Amount bounds) {
        JsonNode value = ask(key);
        if (value.isMissingNode() && bounds.usual().isPresent()) {
            return bounds.usual().get();
        }
        Optional<Double> inside = value.isTextual()
                ? Written.amount(value.textValue(), bounds.quantity())
                : asNumber(value).map(n -> reading.units().inside(bounds.quantity(), n));
        return inside.filter(n -> atLeast(n, bounds.least()) && atLeast(bounds.most(), n))
                .orElseGet(() -> {
                    wrong(key, bounds.words(reading.units()));
                    return bounds.least();
                });
    }

    /** A bound that is stated in one system of units is not missed by a rounding of the other. */
    private static boolean atLeast(double value, double bound) {
        return value >= bound - 1e-9 * Math.abs(bound);
    }

    Optional<Double> maybeAmount(String key, Bounds.Amount bounds) {
        return has(key) ? Optional.of(amount(key, bounds)) : Optional.empty();
    }

    Duration span(String key, Bounds.Span bounds) {
        JsonNode value = ask(key);
        if (value.isMissingNode() && bounds.usual().isPresent()) {
            return bounds.usual().get();
        }
        return (value.isTextual() ? Written.span(value.textValue()) : Optional.<Duration>empty())
                .filter(s -> s.compareTo(bounds.least()) >= 0 && s.compareTo(bounds.most()) <= 0)
                .orElseGet(() -> {
                    wrong(
                            key,
                            "must be a time from \"" + Written.words(bounds.least()) + "\" to \""
                                    + Written.words(bounds.most())
                                    + "\"; units are s, min, h and d");
                    return bounds.least();
                });
    }

    Optional<Duration> maybeSpan(String key, Bounds.Span bounds) {
        return has(key) ? Optional.of(span(key, bounds)) : Optional.empty();
    }

    LocalTime time(String key, LocalTime usual) {
        JsonNode value = ask(key);
        if (value.isMissingNode()) {
            return usual;
        }
        try {
            return LocalTime.parse(value.asText());
        } catch (DateTimeException e) {
            wrong(key, "must be a time of day, \"00:00\" to \"23:59\"");
            return usual;
        }
    }

    Optional<LocalDate> date(String key) {
        try {
            return Optional.of(LocalDate.parse(ask(key).asText()));
        } catch (DateTimeException e) {
            wrong(key, "must be a date, for instance 2026-07-20");
            return Optional.empty();
        }
    }

    /** One of a few words. */
    <E extends Enum<E>> E choice(String key, E usual) {
        JsonNode value = ask(key);
        return value.isMissingNode() ? usual : chosen(key, value, usual.getDeclaringClass());
    }

    /** One of a few words; it must be given. */
    <E extends Enum<E>> E choice(String key, Class<E> words) {
        return chosen(key, ask(key), words);
    }

    private <E extends Enum<E>> E chosen(String key, JsonNode value, Class<E> words) {
        return Arrays.stream(words.getEnumConstants())
                .filter(word -> value.isTextual() && value.textValue().equals(Spelled.dashed(word)))
                .findFirst()
                .orElseGet(() -> {
                    wrong(key, "must be one of " + words(words));
                    return words.getEnumConstants()[0];
                });
    }

    private static String words(Class<? extends Enum<?>> all) {
        return Arrays.stream(all.getEnumConstants())
                .map(word -> "\"" + Spelled.dashed(word) + "\"")
                .collect(Collectors.joining(", "));
    }

    /** Some of a few words. */
    <E extends Enum<E>> List<E> choices(String key, Class<E> words, List<E> usual) {
        JsonNode value = ask(key);
        if (value.isMissingNode() && !usual.isEmpty()) {
            return usual;
        }
        if (!value.isArray() || value.isEmpty()) {
            wrong(key, "must be a list of one or more of " + words(words));
            return usual;
        }
        return chosenOf(key, value, words);
    }

    /** The same, where the list may be empty. */
    <E extends Enum<E>> List<E> maybeChoices(String key, Class<E> words, List<E> usual) {
        JsonNode value = ask(key);
        if (value.isMissingNode()) {
            return usual;
        }
        if (!value.isArray()) {
            wrong(key, "must be a list of any of " + words(words));
            return usual;
        }
        return chosenOf(key, value, words);
    }

    private <E extends Enum<E>> List<E> chosenOf(String key, JsonNode value, Class<E> words) {
        return StreamSupport.stream(value.spliterator(), false)
                .map(entry -> chosen(key, entry, words))
                .distinct()
                .toList();
    }

    /** A list of names; empty where the key is left out. */
    List<String> names(String key) {
        JsonNode value = ask(key);
        boolean right = value.isMissingNode()
                || value.isArray()
                        && StreamSupport.stream(value.spliterator(), false)
                                .allMatch(e -> e.isTextual() && printable(e.textValue()));
        if (!right) {
            wrong(key, "must be a list of names, for instance [\"one\", \"two\"]");
            return List.of();
        }
        List<String> names = new ArrayList<>();
        value.forEach(entry -> names.add(entry.textValue().strip()));
        return names;
    }
}
