package rainward.store;

import com.fasterxml.jackson.databind.SequenceWriter;
import com.fasterxml.jackson.dataformat.csv.CsvGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import rainward.store.row.Gzip;
import rainward.store.row.StoreException;
import rainward.store.row.Trouble;

/**
 * Everything that a database holds, as files that outlive the program: a CSV for each table, and
 * mails and answers of services as the files that they are.
 */
public final class Dump {

    private static final String TOLD = """
            Everything that Rainward kept, in open formats.

            One CSV file (RFC 4180, UTF-8, names in the first line) for each table. Instants are
            ISO 8601 in UTC, days are ISO dates of the farm's zone, a quantity carries its SI unit
            in its name. An empty cell is a value that was not known, "" an empty text. Where a cell holds a path,
            the content is that file: a mail as it went out (.eml), an answer of a service as it
            came (.txt, mostly JSON), or bytes (.bin).
            """;

    private static final CsvMapper CSV = CsvMapper.builder()
            .enable(CsvGenerator.Feature.ALWAYS_QUOTE_EMPTY_STRINGS)
            .build();

    private final Path folder;
    private final Map<String, Long> rows = new LinkedHashMap<>();

    private Dump(Path folder) {
        this.folder = folder;
    }

    /**
     * Writes all that a store holds at one moment.
     *
     * @param folder new or empty
     * @return rows by table
     * @throws StoreException where it cannot be written
     */
    public static Map<String, Long> of(Store store, Path folder) {
        StoreFolder.prepare(folder);
        Dump dump = new Dump(folder);
        try {
            store.atOneMoment(folder, dump::everything);
            return dump.rows;
        } catch (SQLException | JdbiException e) {
            throw new StoreException(folder + ": " + Trouble.words(e), e);
        } catch (IOException e) {
            throw new StoreException(
                    folder + ": cannot be written (" + e
                            + "); make room, or check the permissions of the folder.",
                    e);
        }
    }

    private void everything(Connection connection) throws SQLException, IOException {
        Files.writeString(folder.resolve("README.txt"), TOLD);
        for (String table : tables(connection)) {
            rows.put(table, table(connection, table));
        }
    }

    /** The tables of a database but those that the migration keeps, by name. */
    static List<String> tables(Connection connection) throws SQLException {
        List<String> names = new ArrayList<>();
        try (ResultSet row = connection
                .getMetaData()
                .getTables(null, connection.getSchema(), "%", new String[] {"TABLE"})) {
            while (row.next()) {
                names.add(row.getString("TABLE_NAME"));
            }
        }
        return names.stream()
                .filter(name -> !name.matches("(?i)(flyway|sqlite|qrtz)_.*"))
                .sorted()
                .toList();
    }

    private long table(Connection connection, String table) throws SQLException, IOException {
        long count = 0;
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select * from \"" + table + "\"");
                SequenceWriter out = CSV.writer()
                        .writeValues(Files.newBufferedWriter(folder.resolve(table + ".csv")))) {
            List<String> names = names(row.getMetaData());
            out.write(names);
            while (row.next()) {
                count++;
                out.write(cells(row, names, table + "/" + count));
            }
        }
        return count;
    }

    static List<String> names(ResultSetMetaData columns) throws SQLException {
        List<String> names = new ArrayList<>();
        for (int c = 1; c <= columns.getColumnCount(); c++) {
            names.add(columns.getColumnName(c));
        }
        return names;
    }

    private List<@Nullable Object> cells(ResultSet row, List<String> names, String place)
            throws SQLException, IOException {
        List<@Nullable Object> cells = new ArrayList<>();
        for (String name : names) {
            Object value = row.getObject(name);
            if (value instanceof byte[] bytes) {
                cells.add(
                        name.endsWith("_gzip")
                                ? file(place + ".txt", unpacked(row, bytes))
                                : file(place + (isMail(bytes) ? ".eml" : ".bin"), bytes));
            } else if (value instanceof Number moment && isInstant(name)) {
                cells.add(Instant.ofEpochMilli(moment.longValue()).toString());
            } else {
                cells.add(value);
            }
        }
        return cells;
    }

    private static boolean isInstant(String name) {
        return name.equals("at") || name.endsWith("_at");
    }

    /** Every mail that we write begins with a field of its head; calls of hooks are JSON. */
    private static boolean isMail(byte[] bytes) {
        return new String(bytes, 0, Math.min(60, bytes.length), StandardCharsets.UTF_8)
                .matches("(?s)[A-Z][A-Za-z-]+: .*");
    }

    /** An answer that was damaged on disk is handed on as it lies there. */
    private static byte[] unpacked(ResultSet row, byte[] packed) throws SQLException {
        return Gzip.unpack(packed, row.getString("sha256")).orElse(packed);
    }

    private String file(String place, byte[] bytes) throws IOException {
        Path file = folder.resolve(place);
        Files.createDirectories(folder.resolve(place).resolveSibling(""));
        Files.write(file, bytes);
        return place;
    }
}
