package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.store.journal.Hollows;
import rainward.store.row.StoreException;
import rainward.weather.source.RawPull;

/** Records that change their engine. */
class MoveIT {

    @TempDir
    Path here;

    @TempDir
    Path there;

    @TempDir
    Path back;

    private static Store season(Store store) {
        store.inTransaction(books -> {
            books.fields().take(Hollows.SURVEY, Hollows.JULY);
            for (String name : new String[] {"b", "B", "é", "Z lot", ""}) {
                books.lastKnown().put(name, Instant.EPOCH, "words of " + name);
            }
            for (int i = 0; i < 450; i++) {
                books.forecasts().add(pull(i));
            }
            books.forecasts().forgetBefore(Hollows.JULY.plusSeconds(40));
            return books.journal()
                    .done(Hollows.word("mow", "08:00"), Hollows.NORTH, Hollows.RECIPE);
        });
        store.inTransaction(books -> {
            books.journal().undo(Hollows.word("mow", "08:00"), Hollows.NORTH, Hollows.RECIPE);
            return books.fields().rename(Hollows.NORTH.name(), "Aardvark lot");
        });
        return store;
    }

    private static RawPull pull(int i) {
        return new RawPull(
                "nws",
                "https://weather.example/" + i,
                200,
                Map.of("etag", "" + i),
                ("{\"n\":" + i + "}").getBytes(StandardCharsets.UTF_8),
                Hollows.JULY.plusSeconds(i),
                i % 2 == 0 ? Optional.empty() : Optional.of(Hollows.JULY));
    }

    private static List<String> lines(Path home, String table) throws IOException {
        return Files.readAllLines(home.resolve("dump/" + table + ".csv")).stream()
                .sorted()
                .toList();
    }

    @Test
    void everythingComesOverAndBackAgain() throws IOException {
        try (Store file = season(TestEngine.SQLITE.open(here));
                Store server = TestEngine.POSTGRESQL.open(there);
                Store again = TestEngine.SQLITE.open(back)) {
            Map<String, Long> rows = Move.of(file, server, here);

            assertThat(rows)
                    .containsEntry("last_known", 5L)
                    .containsEntry("forecast_pull", 410L)
                    .containsEntry("journal", 2L);
            assertThat(Move.of(server, again, back)).isEqualTo(rows);
            assertThat(Dump.of(again, back.resolve("dump")))
                    .isEqualTo(Dump.of(file, here.resolve("dump")));
            for (String table : rows.keySet()) {
                assertThat(lines(back, table)).isEqualTo(lines(here, table));
            }
        }
    }

    /** A number that was let go of is not given again, on either engine. */
    @Test
    void numbersGoOn() {
        try (Store file = TestEngine.SQLITE.open(here);
                Store server = TestEngine.POSTGRESQL.open(there);
                Store again = TestEngine.SQLITE.open(back)) {
            file.inTransaction(books -> {
                books.forecasts().add(pull(1));
                books.forecasts().add(pull(2));
                return books.forecasts().forgetBefore(Hollows.JULY.plusSeconds(100));
            });
            Move.of(file, server, here);
            Move.of(server, again, back);

            for (Store store : new Store[] {server, again}) {
                store.inTransaction(books -> {
                    books.forecasts().add(pull(3));
                    return true;
                });
                assertThat(store.<Map<Long, RawPull>>read(books ->
                                books.forecasts().newestOf(List.of("nws"), Long.MAX_VALUE, 9)))
                        .containsOnlyKeys(3L);
            }
        }
    }

    @Test
    void targetThatHoldsAnythingIsLeftAsItIs() {
        try (Store file = season(TestEngine.SQLITE.open(here));
                Store server = TestEngine.POSTGRESQL.open(there)) {
            server.inTransaction(books -> books.jobs().once("brief", Instant.EPOCH, Hollows.JULY));

            assertThatThrownBy(() -> Move.of(file, server, here))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("holds records already (in job_done)");
            assertThat(server.<Integer>read(books -> books.fields().all().size()))
                    .isZero();
        }
    }

    /** What the target cannot hold, or changes on the way, leaves it empty. */
    @Test
    void rowThatDoesNotComeOverWholeMovesNothing() throws SQLException {
        try (Store file = season(TestEngine.SQLITE.open(here));
                Store server = TestEngine.POSTGRESQL.open(there)) {
            run("create function bend() returns trigger language plpgsql as"
                    + " $$ begin new.value = new.value || '!'; return new; end $$");
            run("create trigger bend before insert on last_known for each row"
                    + " when (new.name = 'Z lot') execute function bend()");

            assertThatThrownBy(() -> Move.of(file, server, here))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("row 3 of last_known did not come over whole");
            assertThat(server.<Integer>read(books -> books.fields().all().size()))
                    .isZero();
            assertThat(file.<Integer>read(books -> books.fields().all().size())).isPositive();

            run("drop trigger bend on last_known");
            assertThat(Move.of(file, server, here)).containsEntry("last_known", 5L);
        }
    }

    private void run(String sql) throws SQLException {
        try (Connection connection = TestEngine.POSTGRESQL.connect(there);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
