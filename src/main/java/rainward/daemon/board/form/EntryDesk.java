package rainward.daemon.board.form;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import rainward.board.house.Entry;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Fault;
import rainward.daemon.settings.text.SettingsText;

/** Where entries of the settings are changed by form. */
public final class EntryDesk {

    private final SettingsFile file;

    public EntryDesk(Office office) {
        this.file = new SettingsFile(office);
    }

    /** Everything that can be changed; nothing where the file does not lie in the data folder. */
    public List<Entry.Group> groups() {
        return file.text().map(text -> new EntryForms(text).groups()).orElse(List.of());
    }

    /** The form of an entry, or of a new one where no name is given. */
    public Optional<Entry> form(String kind, Optional<String> name) {
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
                .filter(key -> key.sort() != Kinds.Sort.ROWS && !key.path().contains("."))
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
        if (key.sort() == Kinds.Sort.ROWS) {
            return rows(text, path, Wording.rows(key.path(), parts));
        }
        return typed.isEmpty() ? text.without(path) : text.with(path, Wording.literal(key, parts));
    }

    private static SettingsText rows(
            SettingsText text, String list, List<Map<String, String>> wanted) {
        SettingsText after = text;
        int there = text.at(list).size();
        for (int i = there; i > wanted.size(); i--) {
            after = after.without(list + "[" + i + "]");
        }
        for (int i = 0; i < wanted.size(); i++) {
            Map<String, String> literals = literals(wanted.get(i));
            if (i >= there) {
                after = after.plus(list, literals);
            } else {
                after = row(after, list + "[" + (i + 1) + "]", literals);
            }
        }
        return after;
    }

    private static Map<String, String> literals(Map<String, String> row) {
        Map<String, String> literals = new LinkedHashMap<>();
        Kinds.COMPONENT.stream()
                .filter(key -> row.containsKey(key.path()))
                .forEach(key -> literals.put(key.path(), Wording.literal(key, row)));
        return literals;
    }

    private static SettingsText row(SettingsText text, String path, Map<String, String> literals) {
        SettingsText after = text;
        for (Kinds.Key key : Kinds.COMPONENT) {
            String at = path + "." + key.path();
            String literal = literals.get(key.path());
            if (literal != null) {
                after = after.with(at, literal);
            } else if (!after.at(at).isMissingNode()) {
                after = after.without(at);
            }
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
                        .filter(path -> !kind.single())
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
        String label = kind.keys().stream()
                .filter(key -> !own.equals(fault.key())
                        && (own.equals(key.path())
                                || own.startsWith(key.path() + ".")
                                || own.startsWith(key.path() + "[")))
                .map(key -> own.equals(key.path())
                        ? key.label()
                        : key.label() + ", "
                                + own.substring(key.path().length())
                                        .replaceAll("^\\.|[\\[\\]]", "")
                                        .replace(".", " "))
                .findFirst()
                .orElse(fault.key());
        return label + " " + fault.found() + "; " + fault.remedy() + ".";
    }
}
