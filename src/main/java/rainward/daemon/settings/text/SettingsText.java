package rainward.daemon.settings.text;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * A settings text in which single values are changed. After each change the text is read again: it
 * must say what it said before but for this change, or the change is not made.
 *
 * @param text well-formed TOML
 */
public record SettingsText(String text) {

    private static final Pattern STEP = Pattern.compile("([^.\\[]+)(?:\\[(\\d+)])?");

    /** The text is written in a way that single values cannot be changed in. */
    public static final class CannotChange extends RuntimeException {

        private static final long serialVersionUID = 1;

        CannotChange(String path) {
            super(path + " is written in a way that a form cannot change; change it in the text.");
        }
    }

    /** What the text says. */
    public JsonNode tree() {
        return tree(text);
    }

    private static JsonNode tree(String toml) {
        try {
            return new TomlMapper().readTree(toml);
        } catch (JacksonException e) {
            throw new IllegalArgumentException("is not TOML: " + e.getOriginalMessage(), e);
        }
    }

    /** What stands at a path such as {@code machine[2].speed}; missing where nothing does. */
    public JsonNode at(String path) {
        return walk(tree(), path);
    }

    private static JsonNode walk(JsonNode root, String path) {
        JsonNode node = root;
        Matcher step = STEP.matcher(path);
        while (step.find()) {
            node = node.path(step.group(1));
            if (step.group(2) != null) {
                node = node.path(Integer.parseInt(step.group(2)) - 1);
            }
        }
        return node;
    }

    /**
     * Gives a key another value; its place and its comment stay.
     *
     * @param path of the key; its table is made where there is none
     * @param literal as TOML writes it
     */
    public SettingsText with(String path, String literal) {
        String holder = KeyLines.holder(path);
        String key = path.substring(holder.length() + 1);
        List<String> lines = lines();
        KeyLines places = KeyLines.of(lines);
        if (places.has(path)) {
            int last = places.last(path);
            Optional<String> comment = comment(lines.get(last - 1));
            List<String> value = lines.subList(places.of(path) - 1, last);
            value.clear();
            value.add(line(key, literal, comment));
        } else if (!places.has(holder)) {
            insertTable(lines, places, holder, List.of(line(key, literal, Optional.empty())));
        } else if (!uncommented(lines, places, holder, key, literal)) {
            lines.add(places.last(holder), line(key, literal, Optional.empty()));
        }
        ObjectNode expected = tree().deepCopy();
        table(expected, holder).set(key, tree("v = " + literal).path("v"));
        return checked(lines, expected, path);
    }

    private static String line(String key, String literal, Optional<String> comment) {
        String plain = key + " = " + literal;
        return comment.map(words -> String.format("%-35s %s", plain, words)).orElse(plain);
    }

    /** A key that stands there as a comment is put in force where it stands. */
    private static boolean uncommented(
            List<String> lines, KeyLines places, String holder, String key, String literal) {
        Pattern asleep = Pattern.compile("#\\s*" + Pattern.quote(key) + "\\s*=.*");
        for (int i = places.of(holder); i < end(lines, places, holder, false); i++) {
            String line = lines.get(i).strip();
            if (asleep.matcher(line).matches()) {
                lines.set(i, line(key, literal, comment(line.substring(1))));
                return true;
            }
        }
        return false;
    }

    /** The comment at the end of a line, outside of quotes. */
    private static Optional<String> comment(String line) {
        char quote = 0;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (quote != 0) {
                i += c == '\\' && quote == '"' ? 1 : 0;
                quote = c == quote ? 0 : quote;
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (c == '#') {
                return Optional.of(line.substring(i).strip());
            }
        }
        return Optional.empty();
    }

    /** Takes a key or an entry of a list out. */
    public SettingsText without(String path) {
        List<String> lines = lines();
        KeyLines places = KeyLines.of(lines);
        if (!places.has(path)) {
            throw new CannotChange(path);
        }
        boolean table = places.headers().containsKey(path);
        int last = table ? end(lines, places, path, true) : places.last(path);
        lines.subList(places.of(path) - 1, last).clear();
        ObjectNode expected = tree().deepCopy();
        takeOut(expected, path);
        return checked(lines, expected, path);
    }

    private static void takeOut(ObjectNode root, String path) {
        if (path.endsWith("]")) {
            int bracket = path.lastIndexOf('[');
            int index = Integer.parseInt(path.substring(bracket + 1, path.length() - 1)) - 1;
            String list = path.substring(0, bracket);
            ArrayNode entries = (ArrayNode) walk(root, list);
            entries.remove(index);
            if (entries.isEmpty()) {
                takeOut(root, list);
            }
        } else {
            String holder = KeyLines.holder(path);
            ObjectNode table = holder.isEmpty() ? root : (ObjectNode) walk(root, holder);
            table.remove(holder.isEmpty() ? path : path.substring(holder.length() + 1));
        }
    }

    /** Adds an entry to the end of a list. */
    public SettingsText plus(String list, Map<String, String> literals) {
        List<String> lines = lines();
        KeyLines places = KeyLines.of(lines);
        List<String> keys = new ArrayList<>();
        ObjectNode entry = new TomlMapper().createObjectNode();
        literals.forEach((key, literal) -> {
            keys.add(key + " = " + literal);
            entry.set(key, tree("v = " + literal).path("v"));
        });
        insertTable(lines, places, list + "[" + (places.count(list) + 1) + "]", keys);
        ObjectNode expected = tree().deepCopy();
        String holder = KeyLines.holder(list);
        ObjectNode table = holder.isEmpty() ? expected : table(expected, holder);
        table.withArray(holder.isEmpty() ? list : list.substring(holder.length() + 1))
                .add(entry);
        return checked(lines, expected, list);
    }

    /**
     * Puts the entries of a list in another order, each with its comments.
     *
     * @param order for each place the index that the entry there has now, from 0
     */
    public SettingsText ordered(String list, List<Integer> order) {
        if (order.equals(IntStream.range(0, order.size()).boxed().toList())) {
            return this;
        }
        List<String> lines = lines();
        KeyLines places = KeyLines.of(lines);
        List<Block> blocks = new ArrayList<>();
        for (int i = 1; i <= order.size(); i++) {
            if (!places.has(list + "[" + i + "]")) {
                throw new CannotChange(list);
            }
            blocks.add(Block.of(lines, places, list + "[" + i + "]"));
        }
        List<String> moved = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < order.size(); i++) {
            moved.addAll(lines.subList(from, blocks.get(i).from()));
            Block block = blocks.get(order.get(i));
            moved.addAll(lines.subList(block.from(), block.to()));
            from = blocks.get(i).to();
        }
        moved.addAll(lines.subList(from, lines.size()));
        ObjectNode expected = tree().deepCopy();
        ArrayNode entries = (ArrayNode) walk(expected, list);
        List<JsonNode> before = new ArrayList<>();
        entries.forEach(before::add);
        entries.removeAll();
        order.forEach(index -> entries.add(before.get(index)));
        return checked(moved, expected, list);
    }

    /** Lines of an entry with the comments that lie against it, [from, to), from 0. */
    private record Block(int from, int to) {

        static Block of(List<String> lines, KeyLines places, String path) {
            int from = places.of(path) - 1;
            while (from > 0 && isComment(lines.get(from - 1))) {
                from--;
            }
            int to = SettingsText.end(lines, places, path, true);
            int below = to;
            while (below < lines.size() && isComment(lines.get(below))) {
                below++;
            }
            boolean ofNext = below < lines.size() && !lines.get(below).isBlank();
            return new Block(from, ofNext ? to : below);
        }

        private static boolean isComment(String line) {
            return line.strip().startsWith("#");
        }
    }

    /** Puts a table after the one that it belongs behind, else at the end. */
    private static void insertTable(
            List<String> lines, KeyLines places, String path, List<String> keys) {
        String header = path.replaceAll("\\[\\d+]", "");
        List<String> block = new ArrayList<>();
        block.add("");
        block.add(path.endsWith("]") ? "[[" + header + "]]" : "[" + header + "]");
        block.addAll(keys);
        lines.addAll(placeOf(lines, places, path), block);
    }

    private static int placeOf(List<String> lines, KeyLines places, String path) {
        String list = path.endsWith("]") ? path.substring(0, path.lastIndexOf('[')) : path;
        String before = list + "[" + places.count(list) + "]";
        if (places.has(before)) {
            return Block.of(lines, places, before).to();
        }
        String holder = KeyLines.holder(list);
        return !holder.isEmpty() && places.has(holder)
                ? end(lines, places, holder, true)
                : lines.size();
    }

    /** Lines up to the end of a table; comments above the next table belong to that one. */
    private static int end(List<String> lines, KeyLines places, String path, boolean inside) {
        int start = places.of(path);
        int next = places.headers().entrySet().stream()
                .filter(header -> header.getValue() > start)
                .filter(header -> !inside || !header.getKey().startsWith(path + "."))
                .mapToInt(Map.Entry::getValue)
                .min()
                .orElse(lines.size() + 1);
        int end = next - 1;
        while (end > start
                && (lines.get(end - 1).isBlank()
                        || (inside && lines.get(end - 1).strip().startsWith("#")))) {
            end--;
        }
        return end;
    }

    private static ObjectNode table(ObjectNode root, String path) {
        ObjectNode node = root;
        Matcher step = STEP.matcher(path);
        while (step.find()) {
            node = step.group(2) == null
                    ? node.withObjectProperty(step.group(1))
                    : (ObjectNode)
                            node.path(step.group(1)).path(Integer.parseInt(step.group(2)) - 1);
        }
        return node;
    }

    private List<String> lines() {
        return new ArrayList<>(text.lines().toList());
    }

    private static SettingsText checked(List<String> lines, JsonNode expected, String path) {
        SettingsText changed = new SettingsText(String.join("\n", lines) + "\n");
        try {
            if (changed.tree().equals(expected)) {
                return changed;
            }
        } catch (IllegalArgumentException e) {
            throw (CannotChange) new CannotChange(path).initCause(e);
        }
        throw new CannotChange(path);
    }
}
