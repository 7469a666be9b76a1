package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.Field;
import rainward.store.journal.Hollows;
import rainward.store.journal.JournalEntry;
import rainward.store.row.StoreException;

/** One data folder, opened, closed, broken and opened again. */
class StoreIT {

    @TempDir
    Path home;

    @Nested
    class Opening {

        @Test
        void emptyFolderBecomesADatabaseWithEveryStep() throws SQLException {
            Store.open(home).close();

            assertThat(number("select max(cast(version as integer)) from flyway_schema_history"))
                    .isEqualTo(Schema.NEWEST);
            assertThat(number("select count(*) from outbox")).isZero();
        }

        private static String pragma(Store store, String name) throws Exception {
            List<String> said = new ArrayList<>();
            store.allOrNothing(connection -> {
                try (ResultSet row = connection.createStatement().executeQuery("pragma " + name)) {
                    said.add(row.getString(1));
                }
            });
            return said.get(0);
        }

        @Test
        void databaseIsOfTheSafeKind() throws Exception {
            try (Store store = Store.open(home)) {
                assertThat(pragma(store, "journal_mode")).isEqualTo("wal");
                assertThat(pragma(store, "synchronous")).isEqualTo("2");
                assertThat(pragma(store, "foreign_keys")).isEqualTo("1");
            }
        }

        @Test
        void whatWasWrittenIsThereAfterwards() {
            try (Store store = Store.open(home)) {
                store.inTransaction(books -> books.fields().take(Hollows.SURVEY, Hollows.JULY));
            }
            try (Store store = Store.open(home)) {
                assertThat(store.<List<Field>>read(books -> books.fields().all()))
                        .containsExactly(Hollows.NORTH, Hollows.SOUTH);
            }
        }

        @Test
        void nobodyElseMayReadTheFiles() throws IOException {
            Assumptions.assumeTrue(
                    Files.getFileStore(home).supportsFileAttributeView("posix"),
                    "skipped: this disk knows no owner's permissions");
            Path folder = home.resolve("new");
            try (Store store = Store.open(folder);
                    Stream<Path> files = Files.list(folder)) {
                store.inTransaction(books -> books.fields().take(Hollows.SURVEY, Hollows.JULY));

                assertThat(permissions(folder)).isEqualTo("rwx------");
                assertThat(files.filter(Files::isRegularFile))
                        .hasSizeGreaterThanOrEqualTo(3)
                        .allSatisfy(file -> assertThat(permissions(file)).isEqualTo("rw-------"));
            }
        }

        @Test
        void twoMayHaveItOpenAtOnce() {
            try (Store service = Store.open(home);
                    Store command = Store.open(home)) {
                command.inTransaction(books -> books.fields().take(Hollows.SURVEY, Hollows.JULY));

                assertThat(service.<List<Field>>read(books -> books.fields().all()))
                        .hasSize(2);
            }
        }

        private static String permissions(Path path) {
            try {
                return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
            } catch (IOException e) {
                throw new AssertionError(e);
            }
        }
    }

    @Nested
    class Refusals {

        @Test
        void databaseOfANewerProgramIsLeftAlone() throws SQLException {
            Store.open(home).close();
            change("update flyway_schema_history set version = '99'");

            assertThatThrownBy(() -> Store.open(home))
                    .isInstanceOf(StoreException.class)
                    .hasMessage(
                            database() + ": was written by a newer Rainward (schema 99, this one"
                                    + " knows " + Schema.NEWEST + "); install that version again.");
        }

        @Test
        void fileThatIsNoDatabaseIsNamedAndKept() throws IOException {
            String text = "this is a letter to the cooperative, not a database ".repeat(40);
            Files.writeString(database(), text);

            assertThatThrownBy(() -> Store.open(home))
                    .isInstanceOf(StoreException.class)
                    .hasMessage(database() + ": the database is damaged or is not one; keep a copy"
                            + " of it and put back the last backup.");
            assertThat(database()).hasContent(text);
        }

        @Test
        void folderThatIsAFileIsNamed() throws IOException {
            Path file = Files.writeString(home.resolve("notes"), "x");

            assertThatThrownBy(() -> Store.open(file))
                    .isInstanceOf(StoreException.class)
                    .hasMessage(file + ": is a file; give a folder for the data with --home.");
        }
    }

    @Nested
    class Transactions {

        @Test
        void workThatFailsChangesNothing() {
            try (Store store = Store.open(home)) {
                assertThatThrownBy(() -> store.inTransaction(books -> {
                            books.fields().take(Hollows.SURVEY, Hollows.JULY);
                            throw new IllegalStateException("the power goes");
                        }))
                        .isInstanceOf(IllegalStateException.class);

                assertThat(store.<List<Field>>read(books -> books.fields().all()))
                        .isEmpty();
            }
        }

        @Test
        void whatTheDatabaseRefusesIsSaidInOneSentence() {
            try (Store store = Store.open(home)) {
                assertThatThrownBy(() -> store.inTransaction(books -> {
                            books.journal()
                                    .say(
                                            "No Such Field",
                                            JournalEntry.Kind.DROPPED,
                                            new JournalEntry.Said(
                                                    Hollows.JULY, Hollows.JULY, "foreman"));
                            return Optional.empty();
                        }))
                        .isInstanceOf(StoreException.class)
                        .hasMessageStartingWith("the database refused (");
            }
        }
    }

    private Path database() {
        return home.resolve(StoreFolder.DATABASE);
    }

    private void change(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database());
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private int number(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database());
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            return row.getInt(1);
        }
    }
}
