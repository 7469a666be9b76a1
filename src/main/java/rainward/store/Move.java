package rainward.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import rainward.store.row.StoreException;
import rainward.store.row.Trouble;

/**
 * Carries every record of one database into an empty one, of whatever engine, in one transaction,
 * and reads both sides through before it counts. The one it comes from is only read.
 */
public final class Move {

    /** What others refer to comes first. */
    private static final List<String> TABLES = List.of(
            "property",
            "field",
            "journal",
            "stand_check",
            "rain",
            "forecast_pull",
            "last_good_copy",
            "host_pause",
            "plan_given",
            "window_event",
            "brief_sent",
            "soil_state",
            "job_done",
            "outbox",
            "last_known",
            "ledger",
            "said_chance",
            "lesson");

    /** Rows that are fetched and sent at once. */
    private static final int AT_ONCE = 200;

    private final Store from;
    private final Store to;
    private final Connection source;
    private final Connection target;
    private final Map<String, Long> rows = new LinkedHashMap<>();

    private Move(Store from, Store to, Connection source, Connection target) {
        this.from = from;
        this.to = to;
        this.source = source;
        this.target = target;
    }

    /**
     * Carries everything over, or nothing.
     *
     * @param folder where a file may be laid down meanwhile
     * @return rows by table, each of them compared
     * @throws StoreException where the target holds anything, or a row would not come over whole
     */
    public static Map<String, Long> of(Store from, Store to, Path folder) {
        Map<String, Long> rows = new LinkedHashMap<>();
        try {
            from.atOneMoment(
                    folder,
                    source -> to.allOrNothing(target ->
                            rows.putAll(new Move(from, to, source, target).everything())));
            return rows;
        } catch (SQLException | JdbiException e) {
            throw new StoreException("nothing was moved: " + Trouble.words(e), e);
        } catch (IOException e) {
            throw new StoreException(
                    folder + ": cannot be written (" + e
                            + "); make room, or check the permissions of the folder.",
                    e);
        }
    }

    private Map<String, Long> everything() throws SQLException {
        mustKnow(source);
        mustKnow(target);
        mustBeEmpty();
        for (String table : TABLES) {
            copy(table);
        }
        for (String table : TABLES) {
            rows.put(table, compared(table));
        }
        return rows;
    }

    private static void mustKnow(Connection connection) throws SQLException {
        List<String> there = Dump.tables(connection);
        if (!new TreeSet<>(there).equals(new TreeSet<>(TABLES))) {
            throw new IllegalStateException("tables " + there + ", known are " + TABLES);
        }
    }

    private void mustBeEmpty() throws SQLException {
        for (String table : TABLES) {
            try (Statement statement = target.createStatement();
                    ResultSet row = statement.executeQuery("select 1 from " + table + " limit 1")) {
                if (row.next()) {
                    throw new StoreException(to.place() + ": holds records already (in " + table
                            + "), and nothing is written over; move into an empty database.");
                }
            }
        }
    }

    private void copy(String table) throws SQLException {
        try (Statement statement = reader(source);
                ResultSet row = statement.executeQuery(all(source, table))) {
            List<String> names = Dump.names(row.getMetaData());
            try (PreparedStatement writing = target.prepareStatement(insert(table, names))) {
                while (row.next()) {
                    for (int c = 1; c <= names.size(); c++) {
                        writing.setObject(c, row.getObject(c));
                    }
                    writing.addBatch();
                    if (row.getRow() % AT_ONCE == 0) {
                        writing.executeBatch();
                    }
                }
                writing.executeBatch();
            }
            if (names.contains("id")) {
                to.engine().numberOn(target, table, from.engine().lastNumber(source, table));
            }
        }
    }

    private static Statement reader(Connection connection) throws SQLException {
        Statement statement = connection.createStatement();
        statement.setFetchSize(AT_ONCE);
        return statement;
    }

    private static String insert(String table, List<String> names) {
        return "insert into " + table + " (" + String.join(", ", names) + ") values ("
                + String.join(", ", Collections.nCopies(names.size(), "?")) + ")";
    }

    /** By primary key, whose order is the same on all engines; fields after what they refer to. */
    private static String all(Connection connection, String table) throws SQLException {
        List<String> order = new ArrayList<>();
        if (table.equals("field")) {
            order.add("called is not null");
        }
        try (ResultSet key =
                connection.getMetaData().getPrimaryKeys(null, connection.getSchema(), table)) {
            Map<Integer, String> columns = new TreeMap<>();
            while (key.next()) {
                columns.put(key.getInt("KEY_SEQ"), key.getString("COLUMN_NAME"));
            }
            order.addAll(columns.values());
        }
        return "select * from " + table + " order by " + String.join(", ", order);
    }

    private long compared(String table) throws SQLException {
        long count = 0;
        try (Statement here = reader(source);
                Statement there = reader(target);
                ResultSet was = here.executeQuery(all(source, table));
                ResultSet is = there.executeQuery(all(target, table))) {
            List<String> names = Dump.names(was.getMetaData());
            while (was.next()) {
                count++;
                if (!is.next() || !same(names, was, is)) {
                    throw differs(table, count);
                }
            }
            if (is.next()) {
                throw differs(table, count + 1);
            }
        }
        return count;
    }

    private StoreException differs(String table, long row) {
        return new StoreException("nothing was moved: row " + row + " of " + table
                + " did not come over whole; " + from.place() + " stays as it is.");
    }

    private static boolean same(List<String> names, ResultSet was, ResultSet is)
            throws SQLException {
        for (String name : names) {
            if (!same(was.getObject(name), is.getObject(name))) {
                return false;
            }
        }
        return true;
    }

    /** One engine hands small whole numbers out as int, the other as long. */
    private static boolean same(@Nullable Object was, @Nullable Object is) {
        if (was instanceof byte[] bytes && is instanceof byte[] others) {
            return Arrays.equals(bytes, others);
        }
        boolean whole = isWhole(was) && isWhole(is);
        return whole
                ? ((Number) Objects.requireNonNull(was)).longValue()
                        == ((Number) Objects.requireNonNull(is)).longValue()
                : Objects.equals(was, is);
    }

    private static boolean isWhole(@Nullable Object value) {
        return value instanceof Integer || value instanceof Long;
    }
}
