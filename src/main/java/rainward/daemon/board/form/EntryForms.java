package rainward.daemon.board.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rainward.board.house.Entry;
import rainward.board.house.Entry.Box;
import rainward.board.house.Entry.Item;
import rainward.daemon.settings.text.SettingsText;
import rainward.intake.SharedTables;
import rainward.intake.TableFolder;

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
        return Optional.of(new Entry(kind.table(), name, title, items, name.isPresent()));
    }

    private static JsonNode at(JsonNode entry, String path) {
        JsonNode node = entry;
        for (String step : path.split("\\.")) {
            node = node.path(step);
        }
        return node;
    }

    private Item item(Kinds.Key key, JsonNode value) {
        return new Item(
                key.path(), key.label(), key.hint(), Wording.shown(key, value), boxes(key, value));
    }

    private List<Box> boxes(Kinds.Key key, JsonNode value) {
        String path = key.path();
        return switch (key.sort()) {
            case WORDS, AMOUNT ->
                List.of(new Box(path, key.label(), Entry.Sort.WORDS, value.asText(), List.of()));
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
            case DAYS -> days(path, value);
            case ROWS -> rows(path, value);
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

    private static List<Box> days(String path, JsonNode value) {
        List<Box> boxes = new ArrayList<>();
        for (int i = 0; i <= value.size(); i++) {
            String row = path + "." + i;
            boxes.add(new Box(
                    row + ".from",
                    "from",
                    Entry.Sort.DAY,
                    value.path(i).path("from").asText(),
                    List.of()));
            boxes.add(new Box(
                    row + ".to",
                    "to",
                    Entry.Sort.DAY,
                    value.path(i).path("to").asText(),
                    List.of()));
        }
        return boxes;
    }

    private List<Box> rows(String path, JsonNode value) {
        List<Box> boxes = new ArrayList<>();
        for (int i = 0; i < Math.min(MOST_ROWS, value.size() + 2); i++) {
            for (Kinds.Key key : Kinds.COMPONENT) {
                boxes.add(new Box(
                        path + "." + i + "." + key.path(),
                        key.label(),
                        key.sort() == Kinds.Sort.ONE_OF ? Entry.Sort.ONE_OF : Entry.Sort.WORDS,
                        value.path(i).path(key.path()).asText(),
                        choices(key)));
            }
        }
        return boxes;
    }

    private List<String> choices(Kinds.Key key) {
        if (key.choices().contains(Kinds.MACHINES)) {
            List<String> machines = new ArrayList<>();
            tree.path("machine").forEach(m -> machines.add(m.path("name").asText()));
            return machines;
        }
        if (key.choices().contains(Kinds.SPECIES)) {
            Map<String, ?> species = new SharedTables(TableFolder.onClassPath()).species();
            return species.keySet().stream().sorted().toList();
        }
        return key.choices();
    }
}
