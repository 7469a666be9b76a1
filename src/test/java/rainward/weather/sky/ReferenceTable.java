package rainward.weather.sky;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/** A table of {@code shared/reference}: header row, unit row, numbers, source last. */
record ReferenceTable(List<String> columns, List<List<String>> rows) {

    static ReferenceTable read(String name) {
        String path = "/shared/reference/" + name;
        try (InputStream in = Objects.requireNonNull(
                        ReferenceTable.class.getResourceAsStream(path), path);
                var reader =
                        new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            List<List<String>> lines =
                    reader.lines().map(line -> Arrays.asList(line.split(","))).toList();
            return new ReferenceTable(lines.get(0), lines.subList(2, lines.size()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    double number(int row, String column) {
        return Double.parseDouble(rows.get(row).get(columns.indexOf(column)));
    }

    IntStream indices() {
        return IntStream.range(0, rows.size());
    }
}
