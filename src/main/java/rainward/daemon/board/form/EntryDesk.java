package rainward.daemon.board.form;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.board.house.Entry;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Fault;
import rainward.daemon.settings.text.SettingsText;

/** Where entries of the settings are changed by form. */
public final class EntryDesk {

    private static final Pattern IN_A_LIST = Pattern.compile("(\\w+)\\[(\\d+)]\\.?(.*)");

    private final SettingsFile file;
    private final FieldForm fields;
    private final BoundaryForm boundaries;

    public EntryDesk(Office office) {
        this.file = new SettingsFile(office);
        this.fields = new FieldForm(office);
        this.boundaries = new BoundaryForm(office);
    }

    /** Everything that can be changed; fields alone where the file is not in the data folder. */
    public List<Entry.Group> groups() {
        return Stream.concat(
                        Stream.of(fields.group()),
                        file.text().stream()
                                .flatMap(text -> new EntryForms(text).groups().stream()))
                .toList();
    }

    /** The form of an entry, or of a new one where no name is given. */
    public Optional<Entry> form(String kind, Optional<String> name) {
        if (kind.equals(FieldForm.KIND)) {
            return name.isEmpty() ? Optional.of(fields.form()) : Optional.empty();
        }
        if (kind.equals(BoundaryForm.KIND)) {
            return name.flatMap(boundaries::form);
        }
        return file.text()
                .flatMap(text ->
                        Kinds.named(kind).flatMap(known -> new EntryForms(text).form(known, name)));
    }

    /**
     * Changes an entry, or adds one.
     *
     * @param parts boxes by name; {@code was.KEY} tells what stood there when the form was drawn,
     *     so that nothing that somebody else changed meanwhile is overwritten
     * @throws Refusal that names the faults by the labels of the form
     */
    public String keep(Map<String, String> parts) {
        Kinds.Kind kind = kind(parts);
        Optional<String> name = Optional.ofNullable(parts.get("name@entry"));
        return told(kind, text -> changed(text, kind, name, parts));
    }

    private static Kinds.Kind kind(Map<String, String> parts) {
        return Kinds.named(parts.getOrDefault("kind@entry", ""))
                .orElseThrow(() -> Refusal.badInput("There is nothing of that kind to change."));
    }

    private static String changed(
            String text, Kinds.Kind kind, Optional<String> name, Map<String, String> parts) {
        EntryForms forms = new EntryForms(text);
        SettingsText before = new SettingsText(text);
        if (name.isEmpty() && !kind.single()) {
            return added(before, kind, parts).text();
        }
        String path = forms.path(kind, name)
                .orElseThrow(() -> Refusal.badInput(name.orElse("") + " is no longer there:"
                        + " somebody took it out meanwhile."));
        SettingsText after = before;
        for (Kinds.Key key : kind.keys()) {
            if (name.isEmpty() || !key.path().equals(kind.naming())) {
                after = keyed(after, path, key, parts);
            }
        }
        return after.text();
    }

    private static SettingsText added(
            SettingsText before, Kinds.Kind kind, Map<String, String> parts) {
        Map<String, String> plain = new LinkedHashMap<>();
        kind.keys().stream()
                .filter(key -> !key.tables() && !key.path().contains("."))
                .filter(key -> !Wording.typed(key, parts).isEmpty())
                .forEach(key -> plain.put(key.path(), Wording.literal(key, parts)));
        if (!plain.containsKey(kind.naming())) {
            throw Refusal.badInput("Say what it is called.");
        }
        SettingsText after = before.plus(kind.table(), plain);
        String path = kind.table() + "[" + after.tree().path(kind.table()).size() + "]";
        for (Kinds.Key key : kind.keys()) {
            if (!plain.containsKey(key.path())) {
                after = keyed(after, path, key, parts);
            }
        }
        return after;
    }

    /** One key as typed, where it was changed in the form. */
    private static SettingsText keyed(
            SettingsText text, String entry, Kinds.Key key, Map<String, String> parts) {
        String path = entry + "." + key.path();
        String typed = Wording.typed(key, parts).strip();
        String was = parts.getOrDefault("was." + key.path(), "").strip();
        String now = Wording.shown(key, text.at(path)).strip();
        if (typed.equals(was) || typed.equals(now)) {
            return text;
        }
        if (!now.equals(was)) {
            throw Refusal.badInput(key.label() + " was changed meanwhile, to "
                    + (now.isEmpty() ? "nothing" : "'" + now + "'")
                    + ": load the page again to see it.");
        }
        if (key.tables()) {
            return rows(text, path, key, parts);
        }
        return typed.isEmpty() ? text.without(path) : text.with(path, Wording.literal(key, parts));
    }

    private static SettingsText rows(
            SettingsText text, String list, Kinds.Key key, Map<String, String> parts) {
        List<Wording.Row> wanted = Wording.rows(key, parts);
        List<Wording.Row> inFile = wanted.stream()
                .sorted(Comparator.comparingInt(Wording.Row::index))
                .toList();
        Set<Integer> left = inFile.stream().map(Wording.Row::index).collect(Collectors.toSet());
        SettingsText after = text;
        int there = text.at(list).size();
        for (int i = there; i > 0; i--) {
            after = left.contains(i - 1) ? after : after.without(list + "[" + i + "]");
        }
        for (int i = 0; i < inFile.size(); i++) {
            Wording.Row row = inFile.get(i);
            after = row.index() < there
                    ? row(after, list + "[" + (i + 1) + "]", key, row.cells())
                    : after.plus(list, Wording.literals(key, row.cells()));
        }
        return after.ordered(list, wanted.stream().map(inFile::indexOf).toList());
    }

    private static SettingsText row(
            SettingsText text, String path, Kinds.Key key, Map<String, String> wanted) {
        SettingsText after = text;
        for (Kinds.Key column : key.columns()) {
            String at = path + "." + column.path();
            String typed = Wording.typed(column, wanted);
            if (typed.equals(Wording.shown(column, after.at(at)))) {
                continue;
            }
            after = typed.isEmpty()
                    ? after.without(at)
                    : after.with(at, Wording.literal(column, wanted));
        }
        return after;
    }

    /** Takes an entry out. */
    public String takeOut(Map<String, String> parts) {
        Kinds.Kind kind = kind(parts);
        Optional<String> name = Optional.ofNullable(parts.get("name@entry"));
        return told(
                kind,
                text -> new EntryForms(text)
                        .path(kind, name)
                        .filter(path -> kind.removable())
                        .map(path -> new SettingsText(text).without(path).text())
                        .orElse(text));
    }

    private String told(Kinds.Kind kind, UnaryOperator<String> change) {
        try {
            return file.change(change);
        } catch (SettingsText.CannotChange e) {
            throw Refusal.badInput(String.valueOf(e.getMessage()));
        } catch (SettingsFile.Faulty faulty) {
            throw Refusal.badInput(
                    faulty.faults().stream().map(f -> words(kind, f)).toList());
        }
    }

    /** A fault by the label of its box. */
    private static String words(Kinds.Kind kind, Fault fault) {
        String own = fault.key().replaceFirst("^" + kind.table() + "(\\[\\d+])?\\.?", "");
        String label =
                own.equals(fault.key()) ? fault.key() : label(kind.keys(), own).orElse(fault.key());
        return label + " " + fault.found() + "; " + fault.remedy() + ".";
    }

    /** Label of a key such as {@code season.last_sowing} or {@code stage[2].operation}. */
    private static Optional<String> label(List<Kinds.Key> keys, String path) {
        Matcher list = IN_A_LIST.matcher(path);
        if (list.matches()) {
            return keys.stream()
                    .filter(key -> key.path().equals(list.group(1)))
                    .map(key -> key.label() + " " + list.group(2)
                            + label(key.columns(), list.group(3))
                                    .map(column -> ", " + column)
                                    .orElse(""))
                    .findFirst();
        }
        return keys.stream()
                .filter(key -> path.equals(key.path()) || path.startsWith(key.path() + "."))
                .map(key -> key.label() + path.substring(key.path().length()).replace('.', ' '))
                .findFirst();
    }
}
