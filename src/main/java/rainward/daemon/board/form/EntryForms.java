package rainward.daemon.board.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.board.house.Entry;
import rainward.board.house.Entry.Box;
import rainward.board.house.Entry.Item;
import rainward.daemon.settings.text.SettingsText;

/** Forms of the entries of a settings text, filled with what stands there. */
final class EntryForms {

    /** Rows that one form may have; a mix of more kinds is changed in the text. */
    static final int MOST_ROWS = 24;

    private final SettingsText text;
    private final JsonNode tree;

    EntryForms(String text) {
        this.text = new SettingsText(text);
        this.tree = this.text.tree();
    }

    List<Entry.Group> groups() {
        return Kinds.ALL.stream()
                .map(kind ->
                        new Entry.Group(kind.table(), kind.title(), names(kind), kind.single()))
                .toList();
    }

    private Set<String> names(Kinds.Kind kind) {
        Set<String> names = new LinkedHashSet<>();
        if (!kind.single()) {
            tree.path(kind.table()).forEach(e -> names.add(e.path(kind.naming()).asText()));
        }
        return names;
    }

    /** Path of an entry in the file, if it is there. */
    Optional<String> path(Kinds.Kind kind, Optional<String> name) {
        if (kind.single()) {
            return Optional.of(kind.table());
        }
        int index = name.map(n -> List.copyOf(names(kind)).indexOf(n)).orElse(-1);
        return index < 0 ? Optional.empty() : Optional.of(kind.table() + "[" + (index + 1) + "]");
    }

    /** The form of an entry, or that of a new one. */
    Optional<Entry> form(Kinds.Kind kind, Optional<String> name) {
        if (name.isPresent() && path(kind, name).isEmpty()) {
            return Optional.empty();
        }
        JsonNode entry = path(kind, name).map(text::at).orElse(MissingNode.getInstance());
        List<Item> items = kind.keys().stream()
                .filter(key -> name.isEmpty() || !key.path().equals(kind.naming()))
                .map(key -> item(key, at(entry, key.path())))
                .toList();
        String title = kind.single() ? kind.title() : name.orElse("A new " + kind.one());
        boolean there = name.isPresent() || (kind.single() && !entry.isMissingNode());
        return Optional.of(new Entry(kind.table(), name, title, items, there && kind.removable()));
    }

    private static JsonNode at(JsonNode entry, String path) {
        JsonNode node = entry;
        for (String step : path.split("\\.")) {
            node = node.path(step);
        }
        return node;
    }

    Item item(Kinds.Key key, JsonNode value) {
        return new Item(
                key.path(), key.label(), key.hint(), Wording.shown(key, value), boxes(key, value));
    }

    private List<Box> boxes(Kinds.Key key, JsonNode value) {
        String path = key.path();
        return switch (key.sort()) {
            case WORDS, AMOUNT ->
                List.of(new Box(path, key.label(), Entry.Sort.WORDS, value.asText(), List.of()));
            case TEXT ->
                List.of(new Box(path, key.label(), Entry.Sort.TEXT, value.asText(), List.of()));
            case ONE_OF, YES_NO ->
                List.of(new Box(
                        path,
                        key.label(),
                        Entry.Sort.ONE_OF,
                        Wording.shown(key, value),
                        choices(key)));
            case ANY_OF -> ticks(key, value);
            case POINT ->
                List.of(
                        words(
                                path + ".latitude",
                                "Latitude",
                                value.path("latitude").asText()),
                        words(
                                path + ".longitude",
                                "Longitude",
                                value.path("longitude").asText()));
            case DAY ->
                List.of(new Box(path, key.label(), Entry.Sort.DAY, value.asText(), List.of()));
            case LINES -> rows(key, value, 1);
            case ROWS, ORDERED_ROWS -> rows(key, value, 2);
        };
    }

    private static Box words(String name, String label, String value) {
        return new Box(name, label, Entry.Sort.WORDS, value, List.of());
    }

    private List<Box> ticks(Kinds.Key key, JsonNode value) {
        Set<String> ticked = new LinkedHashSet<>();
        value.forEach(e -> ticked.add(e.asText()));
        List<Box> boxes = new ArrayList<>();
        Set<String> all = new LinkedHashSet<>(ticked);
        all.addAll(choices(key));
        for (String choice : all) {
            boxes.add(new Box(
                    key.path() + "." + boxes.size(),
                    choice,
                    Entry.Sort.ANY_OF,
                    ticked.contains(choice) ? choice : "",
                    List.of(choice)));
        }
        return boxes;
    }

    /** Boxes of every line that is there, and of a few more. */
    private List<Box> rows(Kinds.Key list, JsonNode value, int more) {
        List<Box> boxes = new ArrayList<>();
        int rows = Math.min(MOST_ROWS, Math.max(2 * more, value.size() + more));
        for (int i = 0; i < rows; i++) {
            if (list.sort() == Kinds.Sort.ORDERED_ROWS) {
                String place = i < value.size() ? String.valueOf(i + 1) : "";
                boxes.add(words(list.path() + "." + i + "." + Wording.PLACE, "Place", place));
            }
            for (Kinds.Key column : list.columns()) {
                boxes.add(cell(list.path() + "." + i + ".", column, value.path(i)));
            }
        }
        return boxes;
    }

    private Box cell(String row, Kinds.Key column, JsonNode entry) {
        Box plain = boxes(column, entry.path(column.path())).get(0);
        return new Box(
                row + column.path(), plain.label(), plain.sort(), plain.value(), plain.choices());
    }

    private List<String> choices(Kinds.Key key) {
        return Choices.of(key, tree);
    }
}
