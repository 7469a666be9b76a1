package rainward.intake;

import java.time.DateTimeException;
import java.time.MonthDay;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * One row of a shared table.
 *
 * @param file where it stands
 * @param line in the file, counted from 1
 * @param cells by column
 */
public record TableRow(String file, int line, Map<String, String> cells) {

    public TableRow {
        cells = Map.copyOf(cells);
    }

    /** Text of a cell; an empty one is a fault. */
    public String text(String column) {
        String text = cells.getOrDefault(column, "").strip();
        if (text.isEmpty()) {
            throw fault(column, "is empty", "must be filled in");
        }
        return text;
    }

    public double number(String column) {
        String text = text(column);
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw fault(column, "is '" + text + "'", "must be a number");
        }
    }

    /** A day of the year written {@code 07-31}. */
    public MonthDay day(String column) {
        String text = text(column);
        try {
            return MonthDay.parse("--" + text);
        } catch (DateTimeException e) {
            throw fault(column, "is '" + text + "'", "must be month-day, for instance 07-31");
        }
    }

    /** Keys into {@code sources.csv}, parted by spaces. */
    public List<String> sources() {
        return Arrays.asList(text("source").split(" +"));
    }

    /** Builds a noun from this row; what the noun refuses is told with the row's place. */
    <T> T build(Supplier<T> noun) {
        try {
            return noun.get();
        } catch (IllegalArgumentException e) {
            throw new BadTableException(file + " line " + line + ": " + e.getMessage());
        }
    }

    BadTableException fault(String column, String is, String must) {
        return new BadTableException(
                file + " line " + line + ", column " + column + " " + is + ", " + must);
    }
}
