package rainward.soil;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/** Rows of a table of {@code shared/reference}, by column name; the line of units is left out. */
public record ReferenceRows(List<String> columns, List<List<String>> rows) {

    public static ReferenceRows of(String name) {
        String path = "/shared/reference/" + name;
        try (InputStream in =
                Objects.requireNonNull(ReferenceRows.class.getResourceAsStream(path), path)) {
            List<List<String>> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(line -> List.of(line.split(",")))
                    .toList();
            return new ReferenceRows(lines.get(0), lines.subList(2, lines.size()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public IntStream indices() {
        return IntStream.range(0, rows.size());
    }

    public String text(int row, String column) {
        return rows.get(row).get(columns.indexOf(column));
    }

    public double number(int row, String column) {
        return Double.parseDouble(text(row, column));
    }
}
