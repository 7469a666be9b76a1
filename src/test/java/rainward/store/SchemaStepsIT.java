package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.farm.Field;
import rainward.store.journal.Hollows;

/** A database of every schema that was ever released, opened by the program of today. */
class SchemaStepsIT {

    /** A line in every table of the first schema, as the program of that day wrote it. */
    private static final List<String> SEASON = List.of(
            "insert into property values ('Kettle Hollow', 42.1, -84.4, 1)",
            "insert into field values ('North Hollow', 'Kettle Hollow', 1, 42.1, -84.4, 1.7, 0.4,"
                    + " 0.2, 2.5, 0.02, '[\"clover and chicory\"]', 'mow, disk, seed, firm', 1,"
                    + " null, 1)",
            "insert into journal values (1, 'North Hollow', 'DROPPED', null, null, 1, 1, 'foreman',"
                    + " null, null, null, null, 'too wet')",
            "insert into stand_check values (1, 1, 0.5, 0.7, 'rain')",
            "insert into rain values (1, 'Kettle Hollow', 'gauge', 0, 3600000, 11, 1, 'foreman')",
            "insert into forecast_pull values (1, 'nws', 'http://x', 200, 1, 1, '{}', 'ab', x'00')",
            "insert into last_good_copy values ('http://x', '{}', 'ab', x'00', 1, 1)",
            "insert into host_pause values ('x', 1, 1, 2, 'down')",
            "insert into plan_given values (1, 1, 1, 'morning brief', '{}')",
            "insert into window_event values (1, 'ab12', 1, 'told', 'opens')",
            "insert into brief_sent values ('2026-07-14', 1, 1, 0, 'rank 1')",
            "insert into soil_state values ('North Hollow', 1, 'v1', x'01')",
            "insert into job_done values ('brief', 1, 1, '')",
            "insert into outbox (id, event, recipient, channel, subject, content, created_at,"
                    + " send_from, give_up_at, state, tries, next_try_at, last_words) values (1,"
                    + " 'brief/2026-07-14', 'dell@burroak.example', 'MAIL', 's', x'02', 1, 1, 9,"
                    + " 'WAITING', 0, 1, '')");

    @TempDir
    Path folder;

    static Stream<Integer> everySchema() {
        return IntStream.rangeClosed(1, Schema.NEWEST).boxed();
    }

    @Test
    void newestStepIsTheOneTheProgramKnows() throws IOException {
        try (Stream<Path> steps = Files.list(Path.of("src/main/resources/db"))) {
            assertThat(steps).hasSize(Schema.NEWEST);
        }
    }

    @ParameterizedTest
    @MethodSource("everySchema")
    void databaseOfEachSchemaKeepsAllItsLinesAndBecomesTheNewest(int schema) throws SQLException {
        Path database = folder.resolve("rainward.db");
        released(database, schema);
        List<String> before = lines(database);

        try (Store store = Store.open(folder)) {
            assertThat(store.<List<Field>>read(books -> books.fields().all())).hasSize(1);
            assertThat(store.<Integer>read(books ->
                            books.outbox().row(1).orElseThrow().progress().tries()))
                    .isZero();
        }

        assertThat(lines(database)).containsAll(before);
        Path fresh = folder.resolve("fresh");
        Store.open(fresh).close();
        assertThat(structure(database)).isEqualTo(structure(fresh.resolve("rainward.db")));
    }

    @ParameterizedTest
    @MethodSource("everySchema")
    void whatAnOlderProgramCanOpenIsKeptBesideIt(int schema) throws SQLException {
        released(folder.resolve("rainward.db"), schema);

        Store.open(folder).close();

        Path kept = folder.resolve("before-upgrade-of-schema-" + schema + ".db");
        if (schema == Schema.NEWEST) {
            assertThat(kept).doesNotExist();
        } else {
            assertThat(texts(kept, "select max(version) from flyway_schema_history"))
                    .containsExactly(String.valueOf(schema));
            Backups.requireSound(kept);
            assertThat(Backups.restore(folder, kept, Hollows.JULY)).exists();
        }
    }

    private static void released(Path database, int schema) throws SQLException {
        String url = "jdbc:sqlite:" + database;
        Flyway.configure()
                .dataSource(url, null, null)
                .locations("classpath:db")
                .target(String.valueOf(schema))
                .load()
                .migrate();
        try (Connection connection = DriverManager.getConnection(url);
                Statement statement = connection.createStatement()) {
            for (String line : SEASON) {
                statement.execute(fitting(line, schema));
            }
        }
    }

    /** A column that came with a later step. */
    private static String fitting(String line, int schema) {
        return schema >= 3 && line.contains("into field ")
                ? line.replace(" 1)", " 1, null)")
                : line;
    }

    /** Every line of every table, without what later steps added to it. */
    private static List<String> lines(Path database) throws SQLException {
        List<String> all = new ArrayList<>();
        for (String line : SEASON) {
            String table = line.replaceAll("insert into (\\w+).*", "$1");
            String columns = String.join(
                    " || '|' || ",
                    texts(
                            database,
                            "select 'quote(' || name || ')' from pragma_table_info('" + table
                                    + "') where name not in ('held', 'called')"));
            texts(database, "select " + columns + " from " + table)
                    .forEach(text -> all.add(table + ": " + text));
        }
        return all;
    }

    private static List<String> structure(Path database) throws SQLException {
        return texts(
                database,
                "select type || name || coalesce(sql, '') from sqlite_master"
                        + " where name not like '%flyway%' order by 1");
    }

    private static List<String> texts(Path database, String sql) throws SQLException {
        List<String> all = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            while (row.next()) {
                all.add(row.getString(1));
            }
        }
        return all;
    }
}
