package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.store.journal.Hollows;
import rainward.store.row.StoreException;

/** What a server's database does that a file does not. */
class DatabaseServerIT {

    @TempDir
    Path home;

    @Test
    void serverThatDoesNotAnswerIsNamed() {
        DatabaseServer nobody = new DatabaseServer("jdbc:postgresql://localhost:1/x", "yard", "");

        assertThatThrownBy(() -> Store.open(nobody))
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.isAbsence()).isTrue())
                .hasMessageStartingWith("jdbc:postgresql://localhost:1/x: the database server does"
                        + " not answer (")
                .hasMessageEndingWith("; check that it runs and can be reached from here.");
    }

    @Test
    void databaseThatIsNotThereIsNamed() {
        assertThatThrownBy(() -> Store.open(OwnPostgres.at("nowhere")))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("the server has no such database (")
                .hasMessageEndingWith("; make it there, or check url under [store].");
    }

    @Test
    void wrongPasswordIsToldAndNotShown() throws SQLException, IOException {
        OwnPostgres.askClerkForPassword("right as rain");
        DatabaseServer real = OwnPostgres.databaseOf(home);

        assertThatThrownBy(() -> Store.open(new DatabaseServer(real.url(), "clerk", "hunter2")))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("does not let us in (")
                .hasMessageEndingWith("; check user and password under [store].")
                .message()
                .doesNotContain("hunter2");
        assertThat(new DatabaseServer(real.url(), "clerk", "hunter2").toString())
                .doesNotContain("hunter2");
    }

    @Test
    void databaseOfANewerProgramIsLeftAlone() throws SQLException {
        TestEngine.POSTGRESQL.open(home).close();
        run("update flyway_schema_history set version = '99'");

        assertThatThrownBy(() -> TestEngine.POSTGRESQL.open(home))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("was written by a newer Rainward (schema 99, this one knows "
                        + Schema.NEWEST + ")");
    }

    /** A step that was released means the same for ever, whatever is taught to the engine later. */
    @Test
    void releasedStepsStayAsTheyWere() throws SQLException {
        TestEngine.POSTGRESQL.open(home).close();

        assertThat(names("select version || ' ' || checksum from flyway_schema_history"
                        + " where version is not null order by installed_rank"))
                .containsExactly("1 1955330049", "2 -377960497", "3 -778801480", "4 -703648670");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update journal set at = 0",
                "delete from ledger",
                "update lesson set learned_at = 0"
            })
    void databaseItselfRefusesToRewriteOrShorten(String sql) throws SQLException {
        try (Store store = TestEngine.POSTGRESQL.open(home)) {
            store.inTransaction(books -> {
                books.fields().take(Hollows.SURVEY, Hollows.JULY);
                return books.journal()
                        .done(Hollows.word("mow", "08:00"), Hollows.NORTH, Hollows.RECIPE);
            });
        }
        run(
                "insert into ledger (kind, at, recorded_at, said_by, entry) values ('N', 1, 1, '', '')");
        run("insert into lesson (property, learned_at, lesson) values ('N', 1, '')");

        assertThatThrownBy(() -> run(sql)).hasMessageContaining("is never ");
    }

    @Test
    void textsSortByTheirBytes() {
        try (Store store = TestEngine.POSTGRESQL.open(home)) {
            store.inTransaction(books -> {
                for (String name : List.of("b", "a", "B", "Z lot", "Zlot", "é")) {
                    books.lastKnown().put(name, Instant.EPOCH, name);
                }
                return true;
            });
            assertThat(names("select name from last_known order by name"))
                    .containsExactly("B", "Z lot", "Zlot", "a", "b", "é");
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }

    /** Twenty count on at once: each sees what the one before it wrote. */
    @Test
    void writersTakeTurns() throws Exception {
        ExecutorService people = Executors.newFixedThreadPool(4);
        try (Store store = TestEngine.POSTGRESQL.open(home)) {
            Callable<Integer> counting = () -> store.inTransaction(books -> {
                int next = books.lastKnown().find("count", Integer.class).orElse(0) + 1;
                // Long enough for the others to read the same, if nothing kept them.
                LockSupport.parkNanos(20_000_000);
                books.lastKnown().put("count", Instant.EPOCH, next);
                return next;
            });
            for (var done : people.invokeAll(Collections.nCopies(20, counting))) {
                done.get();
            }
            assertThat(store.<Integer>read(books ->
                            books.lastKnown().find("count", Integer.class).orElseThrow()))
                    .isEqualTo(20);
        } finally {
            people.shutdownNow();
        }
    }

    @Test
    void databaseHasOneService() {
        try (Store first = TestEngine.POSTGRESQL.open(home);
                Store second = TestEngine.POSTGRESQL.open(home)) {
            try (Store.Hold held = first.alone()) {
                assertThat(held).isNotNull();
                assertThatThrownBy(second::alone)
                        .isInstanceOf(StoreException.class)
                        .hasMessageContaining("in use by another service");
            }
            second.alone().close();
        }
    }

    @Test
    void backupSaysWhoseAffairItIs() {
        try (Store store = TestEngine.POSTGRESQL.open(home)) {
            Path copies = home.resolve("copies");
            assertThatThrownBy(() -> Backups.make(store, copies, LocalDate.of(2026, 7, 15), 3))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("let pg_dump run every night");
            assertThat(copies).doesNotExist();
        }
    }

    /** While nobody is let in, each piece of work says so; then all goes on by itself. */
    @Test
    void silentServerIsKnownSinceWhenAndForgottenWhenItIsBack() throws SQLException {
        try (Store store = TestEngine.POSTGRESQL.open(home)) {
            assertThat(store.<Integer>read(books -> books.fields().all().size()))
                    .isZero();
            assertThat(store.silentSince()).isEmpty();
            Instant before = Instant.now();
            OwnPostgres.shut(home);

            assertThatThrownBy(() -> store.read(books -> books.fields().all()))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("the database server does not answer");
            assertThat(store.silentSince().orElseThrow()).isBetween(before, Instant.now());
            Instant since = store.silentSince().orElseThrow();
            assertThatThrownBy(() -> store.read(books -> books.fields().all()))
                    .isInstanceOf(StoreException.class);
            assertThat(store.silentSince()).contains(since);

            OwnPostgres.letIn(home);
            // A connection that was begun before may be handed out once more.
            await().atMost(Duration.ofSeconds(30))
                    .ignoreExceptions()
                    .until(() -> store.read(books -> books.fields().all().isEmpty()));
            assertThat(store.silentSince()).isEmpty();
        }
    }

    private void run(String sql) throws SQLException {
        try (Connection connection = TestEngine.POSTGRESQL.connect(home);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private List<String> names(String sql) throws SQLException {
        List<String> all = new ArrayList<>();
        try (Connection connection = TestEngine.POSTGRESQL.connect(home);
                Statement statement = connection.createStatement();
                var row = statement.executeQuery(sql)) {
            while (row.next()) {
                all.add(row.getString(1));
            }
        }
        return all;
    }
}
