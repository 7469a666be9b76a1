package rainward.daemon.settings.text;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where each key of a TOML file stands. The parser tells lines only for what it cannot read; this
 * finds them again in a file that it has read, so that the text is known to be well formed.
 */
public final class KeyLines {

    private static final Pattern TABLE = Pattern.compile("\\[([^\\[\\]]+)]");
    private static final Pattern ENTRY = Pattern.compile("\\[\\[([^\\[\\]]+)]]");
    private static final Pattern KEY = Pattern.compile("([A-Za-z0-9_.\"' -]+?)\\s*=(.*)");

    private final Map<String, Integer> lines = new HashMap<>();
    private final Map<String, Integer> lasts = new HashMap<>();
    private final Map<String, Integer> headers = new LinkedHashMap<>();
    private final Map<String, Integer> counts = new HashMap<>();
    private String newest = "";
    private String table = "";
    private String openEnd = "";
    private int openBrackets;

    private KeyLines() {}

    public static KeyLines of(List<String> text) {
        KeyLines all = new KeyLines();
        for (int i = 0; i < text.size(); i++) {
            all.take(text.get(i).strip(), i + 1);
        }
        return all;
    }

    /** Line of a key; where it is not there, of the table that should hold it. */
    public int of(String path) {
        Integer line = lines.get(path);
        return line != null ? line : path.isEmpty() ? 0 : of(holder(path));
    }

    /** True where the very key or table stands somewhere. */
    boolean has(String path) {
        return lines.containsKey(path);
    }

    /** Last line of the value of a key, or of the keys of a table without the tables inside it. */
    int last(String path) {
        return lasts.getOrDefault(path, of(path));
    }

    /** Lines of the headers of tables, by path, in the order of the file. */
    Map<String, Integer> headers() {
        return Collections.unmodifiableMap(headers);
    }

    /** How many entries a list has. */
    int count(String list) {
        return counts.getOrDefault(list, 0);
    }

    /** What holds a key: the list of an entry, the table of a key. */
    static String holder(String path) {
        return path.substring(
                0,
                Math.max(
                        0,
                        Math.max(
                                path.lastIndexOf('.'),
                                path.endsWith("]") ? path.lastIndexOf('[') : 0)));
    }

    private void take(String line, int number) {
        if (!openEnd.isEmpty() || openBrackets > 0) {
            reaches(number);
        }
        if (!openEnd.isEmpty()) {
            openEnd = line.contains(openEnd) ? "" : openEnd;
        } else if (openBrackets > 0) {
            openBrackets += brackets(line);
        } else {
            start(line, number);
        }
    }

    /** The newest value and its table reach down to a line. */
    private void reaches(int number) {
        lasts.put(newest, number);
        lasts.put(table, number);
    }

    private void start(String line, int number) {
        Matcher entry = ENTRY.matcher(line);
        Matcher header = TABLE.matcher(line);
        Matcher key = KEY.matcher(line);
        if (entry.lookingAt()) {
            String list = resolved(plain(entry.group(1)));
            int index = counts.merge(list, 1, Integer::sum);
            table = list + "[" + index + "]";
            lines.put(table, number);
            headers.put(table, number);
            lines.putIfAbsent(list, number);
        } else if (header.lookingAt()) {
            table = resolved(plain(header.group(1)));
            lines.put(table, number);
            headers.put(table, number);
        } else if (!line.startsWith("#") && key.matches()) {
            String path = plain(key.group(1));
            newest = table.isEmpty() ? path : table + "." + path;
            lines.put(newest, number);
            reaches(number);
            open(key.group(2).strip());
        }
    }

    /** A table inside an entry of a list belongs to the newest entry. */
    private String resolved(String header) {
        StringBuilder path = new StringBuilder();
        String[] parts = header.split("\\.");
        for (int i = 0; i < parts.length; i++) {
            path.append(i == 0 ? "" : ".").append(parts[i]);
            Integer count = counts.get(path.toString());
            if (count != null && i < parts.length - 1) {
                path.append('[').append(count).append(']');
            }
        }
        return path.toString();
    }

    private void open(String value) {
        for (String quote : List.of("\"\"\"", "'''")) {
            if (value.startsWith(quote) && !value.substring(3).contains(quote)) {
                openEnd = quote;
                return;
            }
        }
        openBrackets = Math.max(0, brackets(value));
    }

    /** Brackets opened less brackets closed, outside quotes and comments. */
    private static int brackets(String text) {
        int open = 0;
        char quote = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quote != 0) {
                quote = c == quote ? 0 : quote;
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (c == '#') {
                return open;
            } else {
                open += c == '[' ? 1 : c == ']' ? -1 : 0;
            }
        }
        return open;
    }

    private static String plain(String name) {
        return name.replaceAll("[\"' ]", "");
    }
}
