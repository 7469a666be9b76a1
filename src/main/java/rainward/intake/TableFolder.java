package rainward.intake;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A folder of shared tables: comma-separated, a header line, a line of units, then rows that each
 * name their source.
 */
public final class TableFolder {
    private static final ObjectReader ROWS = CsvMapper.builder()
            .enable(CsvParser.Feature.SKIP_EMPTY_LINES)
            .build()
            .readerForMapOf(String.class)
            .with(CsvSchema.emptySchema().withHeader().withStrictHeaders(true));

    private final String name;
    private final Opener opener;

    private TableFolder(String name, Opener opener) {
        this.name = name;
        this.opener = opener;
    }

    /** The tables that come with the program. */
    public static TableFolder onClassPath() {
        return new TableFolder(
                "shared", file -> TableFolder.class.getResourceAsStream("/shared/" + file));
    }

    /** Tables in a folder of the person's own. */
    public static TableFolder at(Path folder) {
        return new TableFolder(folder.toString(), file -> {
            Path path = folder.resolve(file);
            return Files.isRegularFile(path) ? Files.newInputStream(path) : null;
        });
    }

    /**
     * All rows of a table but its units.
     *
     * @param file for instance {@code species.csv}
     * @param columns that must be there
     */
    public List<TableRow> rows(String file, List<String> columns) {
        String place = name + "/" + file;
        try (InputStream stream = opener.open(file)) {
            if (stream == null) {
                throw new BadTableException(place + " is missing, must be a table of " + columns);
            }
            return read(place, stream, columns);
        } catch (IOException e) {
            throw new BadTableException(place + " cannot be read: " + e.getMessage());
        }
    }

    private static List<TableRow> read(String place, InputStream stream, List<String> columns)
            throws IOException {
        List<TableRow> rows = new ArrayList<>();
        try (MappingIterator<Map<String, String>> lines = ROWS.readValues(stream)) {
            while (lines.hasNextValue()) {
                Map<String, String> cells = lines.nextValue();
                int line = lines.getParser().currentTokenLocation().getLineNr();
                rows.add(new TableRow(place, line, cells));
            }
        }
        if (rows.isEmpty()) {
            throw new BadTableException(place + " has no rows, must have a header and units");
        }
        for (String column : columns) {
            if (!rows.get(0).cells().containsKey(column)) {
                throw new BadTableException(place + " line 1: column " + column + " is missing");
            }
        }
        return List.copyOf(rows.subList(1, rows.size()));
    }

    /** Opens a file of the folder; null where there is none. */
    private interface Opener {
        @Nullable
        InputStream open(String file) throws IOException;
    }
}
