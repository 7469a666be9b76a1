package rainward.intake;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * A table as spreadsheets save it (RFC 4180): a header and lines, parted by commas, or by
 * semicolons with decimal commas as some countries do.
 *
 * @param columns as the program knows them
 * @param rows lines after the header that are not empty
 * @param faults what was wrong so far
 */
record SpreadSheet(List<String> columns, List<Particulars> rows, Faults faults) {

    /** Reads a file and hands it on; a file that cannot be read at all is one fault. */
    static <T> Intake<T> open(Path file, Function<SpreadSheet, Intake<T>> next) {
        String name = file.toString();
        return TextFile.read(file, text -> {
            Faults faults = new Faults(name);
            try {
                SpreadSheet sheet = read(text, faults);
                return faults.count() > 0 ? faults.outcome(() -> never()) : next.apply(sheet);
            } catch (JacksonException e) {
                return Faults.single(
                        name,
                        "line " + Math.max(1, e.getLocation().getLineNr()),
                        "is not a line of a table (" + e.getOriginalMessage() + ")",
                        "look for a quote that is not closed");
            } catch (IOException e) {
                return Faults.single(
                        name, "", "cannot be read (" + e.getMessage() + ")", "save it as CSV");
            }
        });
    }

    private static <T> T never() {
        throw new IllegalStateException("a file with faults gives no value");
    }

    private static SpreadSheet read(String text, Faults faults) throws IOException {
        List<String> written = text.lines().toList();
        String header = written.isEmpty() ? "" : written.get(0);
        boolean semicolons = !header.contains(",") && header.contains(";");
        int line = 0;
        List<String> columns = new ArrayList<>();
        List<Particulars> rows = new ArrayList<>();
        try (MappingIterator<String[]> lines = CsvMapper.builder()
                .enable(CsvParser.Feature.WRAP_AS_ARRAY)
                .enable(CsvParser.Feature.SKIP_EMPTY_LINES)
                .build()
                .readerFor(String[].class)
                .with(CsvSchema.emptySchema().withColumnSeparator(semicolons ? ';' : ','))
                .readValues(text)) {
            while (lines.hasNextValue()) {
                String[] cells = lines.nextValue();
                int first = firstFilled(written, line);
                line = lines.getParser().currentTokenLocation().getLineNr();
                if (columns.isEmpty()) {
                    columns.addAll(header(cells, faults));
                } else {
                    rows.add(row(columns, cells, new Line(first, semicolons, faults)));
                }
            }
        }
        return new SpreadSheet(List.copyOf(columns), List.copyOf(rows), faults);
    }

    /** Where a row starts; the parser tells only where it ends. */
    private static int firstFilled(List<String> written, int after) {
        int line = after;
        while (line < written.size() - 1 && written.get(line).isBlank()) {
            line++;
        }
        return line + 1;
    }

    private static List<String> header(String[] cells, Faults faults) {
        List<String> columns = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (String cell : cells) {
            String column = Particulars.column(cell);
            if (!column.isEmpty() && !seen.add(column)) {
                faults.add(
                        "line 1", "column \"" + column + "\" comes twice", "leave one of them out");
            }
            columns.add(column);
        }
        return columns;
    }

    private static Particulars row(List<String> columns, String[] cells, Line line) {
        if (cells.length > columns.size()) {
            line.faults()
                    .add(
                            line.place(),
                            "has " + cells.length + " cells, the header has " + columns.size(),
                            "put text that holds the separator into quotes");
        }
        Map<String, String> named = new LinkedHashMap<>();
        for (int i = 0; i < Math.min(cells.length, columns.size()); i++) {
            named.put(columns.get(i), line.plain(cells[i]));
        }
        return Particulars.of(line.place(), named, line.faults());
    }

    /** A line of the file, counted from 1. */
    private record Line(int number, boolean decimalCommas, Faults faults) {

        String place() {
            return "line " + number;
        }

        String plain(String cell) {
            return decimalCommas && cell.strip().matches("[-+]?[0-9]*,[0-9]+")
                    ? cell.replace(',', '.')
                    : cell;
        }
    }
}
