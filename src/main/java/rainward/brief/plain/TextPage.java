package rainward.brief.plain;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Lines of plain text, none wider than {@link Columns#WIDTH}. */
public final class TextPage {

    private final StringBuilder text = new StringBuilder();

    /** A heading after an empty line. */
    TextPage heading(String words) {
        text.append('\n');
        return line("", words.toUpperCase(Locale.ROOT));
    }

    /** Text that may take several lines, the later ones as far in as the first. */
    TextPage line(String indent, String words) {
        return line(indent, indent, words);
    }

    /** Text that may take several lines. */
    TextPage line(String first, String rest, String words) {
        for (String line : Columns.wrapped(first, rest, words)) {
            text.append(line.stripTrailing()).append('\n');
        }
        return this;
    }

    TextPage items(List<String> items) {
        items.forEach(item -> line("- ", "  ", item));
        return this;
    }

    TextPage rule() {
        text.append("-".repeat(Columns.WIDTH)).append('\n');
        return this;
    }

    /** Rows of cells; each column is as wide as its widest cell, and the last one wraps. */
    TextPage rows(String indent, List<List<String>> rows) {
        int fixed = rows.stream().mapToInt(List::size).max().orElse(1) - 1;
        int[] widths = new int[fixed];
        for (List<String> row : rows) {
            for (int c = 0; c < fixed; c++) {
                widths[c] = Math.max(widths[c], Columns.width(row.get(c)));
            }
        }
        rows.forEach(row -> row(indent, row, widths));
        return this;
    }

    /** Where the fixed cells leave the last one too little room, it starts on a line of its own. */
    private void row(String indent, List<String> row, int[] widths) {
        StringBuilder first = new StringBuilder(indent);
        for (int c = 0; c < widths.length; c++) {
            first.append(Columns.padded(row.get(c), widths[c])).append("  ");
        }
        if (Columns.width(first.toString()) > Columns.WIDTH * 2 / 3) {
            line(indent, row.stream().collect(Collectors.joining("  ")));
        } else {
            line(
                    first.toString(),
                    " ".repeat(Columns.width(first.toString())),
                    row.get(row.size() - 1));
        }
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
