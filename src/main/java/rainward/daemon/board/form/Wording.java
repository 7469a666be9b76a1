package rainward.daemon.board.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import rainward.daemon.office.Refusal;

/** Values of the settings file in one line, as read, as typed and as TOML writes them. */
final class Wording {

    private static final Pattern NUMBER = Pattern.compile("[-+]?\\d+(\\.\\d+)?");

    /** Ends the name of the box that holds the place of a row among the others. */
    static final String PLACE = "place";

    private Wording() {}

    /** What stands in the file. */
    static String shown(Kinds.Key key, JsonNode value) {
        return switch (key.sort()) {
            case ANY_OF -> joined(value, JsonNode::asText, ", ");
            case POINT ->
                value.isObject()
                        ? value.path("latitude").asText() + " "
                                + value.path("longitude").asText()
                        : "";
            case LINES, ROWS, ORDERED_ROWS -> joined(value, entry -> row(key, entry), "; ");
            case YES_NO -> value.isBoolean() ? value.booleanValue() ? "yes" : "no" : "";
            case WORDS, TEXT, AMOUNT, DAY, ONE_OF -> value.asText();
        };
    }

    private static String row(Kinds.Key key, JsonNode entry) {
        return key.columns().stream()
                .map(column -> shown(column, entry.path(column.path())))
                .collect(Collectors.joining(" | "));
    }

    private static String joined(
            JsonNode list, java.util.function.Function<JsonNode, String> each, String between) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(each)
                .collect(Collectors.joining(between));
    }

    /** What was typed, in the same line. */
    static String typed(Kinds.Key key, Map<String, String> parts) {
        String path = key.path();
        return switch (key.sort()) {
            case ANY_OF -> String.join(", ", ticked(path, parts));
            case POINT ->
                (part(parts, path + ".latitude") + " " + part(parts, path + ".longitude")).strip();
            case LINES, ROWS, ORDERED_ROWS ->
                rows(key, parts).stream()
                        .map(row -> key.columns().stream()
                                .map(column -> part(row.cells(), column.path()))
                                .collect(Collectors.joining(" | ")))
                        .collect(Collectors.joining("; "));
            case WORDS, TEXT, AMOUNT, DAY, ONE_OF, YES_NO -> part(parts, path);
        };
    }

    private static String part(Map<String, String> parts, String name) {
        return parts.getOrDefault(name, "").strip();
    }

    /** What is ticked, in the order of the form. */
    static List<String> ticked(String path, Map<String, String> parts) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < EntryForms.MOST_ROWS; i++) {
            Optional.ofNullable(parts.get(path + "." + i)).ifPresent(all::add);
        }
        return all;
    }

    /**
     * A row of a list as typed.
     *
     * @param index in the form, from 0; rows of the file come first there
     * @param cells that are filled, by column
     */
    record Row(int index, Map<String, String> cells) {}

    /** Rows of which anything is filled in, in the order wanted. */
    static List<Row> rows(Kinds.Key list, Map<String, String> parts) {
        List<Row> filled = filled(list, parts);
        return list.sort() == Kinds.Sort.ORDERED_ROWS ? inPlaces(list, filled, parts) : filled;
    }

    /** Rows whose place was changed are taken out and put there, the lowest place first. */
    private static List<Row> inPlaces(Kinds.Key list, List<Row> filled, Map<String, String> parts) {
        Map<Integer, Row> moved = new TreeMap<>();
        for (Row row : filled) {
            String typed = part(parts, list.path() + "." + row.index() + "." + PLACE);
            if (!typed.isEmpty() && !typed.equals(String.valueOf(row.index() + 1))) {
                Row other = moved.put(place(list, row, typed), row);
                if (other != null) {
                    throw Refusal.badInput(list.label() + " " + (other.index() + 1) + " and "
                            + (row.index() + 1) + " are both wanted at place " + typed
                            + "; give each a place of its own.");
                }
            }
        }
        List<Row> ordered = new ArrayList<>(filled);
        ordered.removeAll(moved.values());
        moved.forEach((place, row) -> ordered.add(Math.min(place - 1, ordered.size()), row));
        return ordered;
    }

    private static int place(Kinds.Key list, Row row, String typed) {
        if (typed.matches("[1-9]\\d?")) {
            return Integer.parseInt(typed);
        }
        throw Refusal.badInput(list.label() + " " + (row.index() + 1) + ", place = \"" + typed
                + "\"; must be a whole number from 1 on.");
    }

    private static List<Row> filled(Kinds.Key list, Map<String, String> parts) {
        List<Row> all = new ArrayList<>();
        for (int i = 0; i < EntryForms.MOST_ROWS; i++) {
            String row = list.path() + "." + i + ".";
            Map<String, String> filled = list.columns().stream()
                    .filter(key -> !part(parts, row + key.path()).isEmpty())
                    .collect(Collectors.toMap(
                            Kinds.Key::path, key -> part(parts, row + key.path())));
            if (!filled.isEmpty()) {
                all.add(new Row(i, filled));
            }
        }
        return all;
    }

    /** What was typed as TOML writes it. */
    static String literal(Kinds.Key key, Map<String, String> parts) {
        String typed = typed(key, parts);
        return switch (key.sort()) {
            case ANY_OF ->
                ticked(key.path(), parts).stream()
                        .map(Wording::quoted)
                        .collect(Collectors.joining(", ", "[", "]"));
            case POINT -> point(key, parts);
            case LINES ->
                rows(key, parts).stream()
                        .map(row -> line(key, row.cells()))
                        .collect(Collectors.joining(", ", "[", "]"));
            case DAY -> day(key, typed);
            case YES_NO -> String.valueOf(typed.equals("yes"));
            case AMOUNT -> amount(typed);
            case WORDS, TEXT, ONE_OF -> quoted(typed);
            case ROWS, ORDERED_ROWS ->
                throw new IllegalStateException("rows are tables of their own");
        };
    }

    /** A plain number, or a text with its unit. */
    static String amount(String typed) {
        String whole = typed.startsWith(".") ? "0" + typed : typed;
        return NUMBER.matcher(whole).matches() ? whole : quoted(typed);
    }

    static String quoted(String text) {
        return TextNode.valueOf(text).toString();
    }

    private static String point(Kinds.Key key, Map<String, String> parts) {
        return "{ latitude = " + amount(part(parts, key.path() + ".latitude")) + ", longitude = "
                + amount(part(parts, key.path() + ".longitude")) + " }";
    }

    private static String line(Kinds.Key list, Map<String, String> row) {
        return literals(list, row).entrySet().stream()
                .map(cell -> cell.getKey() + " = " + cell.getValue())
                .collect(Collectors.joining(", ", "{ ", " }"));
    }

    /** The cells of a line that are filled, as TOML writes them, in the order of the columns. */
    static Map<String, String> literals(Kinds.Key list, Map<String, String> row) {
        Map<String, String> literals = new LinkedHashMap<>();
        list.columns().stream()
                .filter(column -> row.containsKey(column.path()))
                .forEach(column -> literals.put(column.path(), literal(column, row)));
        return literals;
    }

    private static String day(Kinds.Key key, String text) {
        try {
            return LocalDate.parse(text).toString();
        } catch (DateTimeException e) {
            throw Refusal.badInput("'" + text + "' (" + key.label()
                    + ") is no day; write for instance 2026-07-25.");
        }
    }
}
