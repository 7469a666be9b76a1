package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.Field;
import rainward.store.journal.Hollows;
import rainward.store.row.StoreException;

class BackupsIT {

    private static final LocalDate DAY = LocalDate.of(2026, 7, 14);

    @TempDir
    Path folder;

    private Path home;
    private Path copies;

    @BeforeEach
    void twoFields() {
        home = folder.resolve("home");
        copies = folder.resolve("copies");
        try (Store store = Store.open(home)) {
            store.inTransaction(books -> books.fields().take(Hollows.SURVEY, Hollows.JULY));
        }
    }

    private Path backUp(LocalDate day) {
        try (Store store = Store.open(home)) {
            return Backups.make(store, copies, day, 3);
        }
    }

    private List<Field> fields() {
        try (Store store = Store.open(home)) {
            return store.read(books -> books.fields().all());
        }
    }

    private static long ask(Path copy, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + copy);
                Statement statement = connection.createStatement()) {
            if (!statement.execute(sql)) {
                return 0;
            }
            try (ResultSet row = statement.getResultSet()) {
                return row.getLong(1);
            }
        }
    }

    /** Wipes one page, an index of the outbox; everything else can still be read. */
    private static void wipeAnIndex(Path copy) throws IOException, SQLException {
        long page = ask(copy, "select rootpage from sqlite_master where name = 'outbox_by_state'");
        int size = (int) ask(copy, "pragma page_size");
        try (FileChannel channel = FileChannel.open(copy, StandardOpenOption.WRITE)) {
            channel.write(ByteBuffer.wrap(new byte[size]), (page - 1) * size);
        }
    }

    @Test
    void copyMadeWhileInUseBringsEverythingBack() throws IOException {
        Path copy = backUp(DAY);
        Files.write(home.resolve("rainward.db"), new byte[4096]);

        Path aside = Backups.restore(home, copy, Hollows.JULY);

        assertThat(fields()).containsExactly(Hollows.NORTH, Hollows.SOUTH);
        assertThat(aside).exists().hasBinaryContent(new byte[4096]);
        assertThat(copy).exists();
    }

    @Test
    void onlyTheNewestCopiesAreKept() throws IOException {
        Stream.of(0, 1, 2, 3, 4).forEach(days -> backUp(DAY.plusDays(days)));
        backUp(DAY.plusDays(4));

        try (Stream<Path> left = Files.list(copies)) {
            assertThat(left.map(path -> path.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            "rainward-2026-07-16.db",
                            "rainward-2026-07-17.db",
                            "rainward-2026-07-18.db");
        }
    }

    @Test
    void damagedCopyIsNotPutBack() throws IOException, SQLException {
        Path copy = backUp(DAY);
        wipeAnIndex(copy);

        assertThatThrownBy(() -> Backups.restore(home, copy, Hollows.JULY))
                .isInstanceOf(StoreException.class)
                .hasMessageStartingWith(copy + ": ")
                .hasMessageContaining("damaged");
        assertThat(fields()).hasSize(2);
    }

    @Test
    void copyWithWorkOnAFieldThatIsNotThereIsNotPutBack() throws SQLException {
        Path copy = backUp(DAY);
        ask(
                copy,
                "insert into journal (field, kind, at, recorded_at, said_by)"
                        + " values ('No Such Field', 'DROPPED', 0, 0, 'nobody')");

        assertThatThrownBy(() -> Backups.restore(home, copy, Hollows.JULY))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("damaged");
    }

    @Test
    void letterIsNotPutBack() throws IOException {
        Path letter = Files.writeString(folder.resolve("letter"), "Dear cooperative, ".repeat(99));

        assertThatThrownBy(() -> Backups.restore(home, letter, Hollows.JULY))
                .isInstanceOf(StoreException.class)
                .hasMessageStartingWith(letter + ": ");
        assertThat(fields()).hasSize(2);
    }

    @Test
    void copyThatIsNotThereIsNamed() {
        assertThatThrownBy(() -> Backups.restore(home, folder.resolve("none.db"), Hollows.JULY))
                .isInstanceOf(StoreException.class)
                .hasMessage(folder.resolve("none.db") + ": is not there; name a backup file.");
    }

    @Test
    void nothingIsPutBackUnderARunningService() {
        Path copy = backUp(DAY);
        try (FolderLock service = FolderLock.take(home)) {
            assertThat(service).isNotNull();
            assertThatThrownBy(() -> Backups.restore(home, copy, Hollows.JULY))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("in use by");
        }
    }

    @Test
    void damagedDatabaseDoesNotPushAGoodCopyOut() throws IOException, SQLException {
        Path good = backUp(DAY);
        wipeAnIndex(home.resolve("rainward.db"));

        assertThatThrownBy(() -> backUp(DAY.plusDays(1)))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("not copied over a good backup");
        assertThat(Backups.in(copies)).containsExactly(good);
        Backups.restore(home, good, Hollows.JULY);
        assertThat(fields()).hasSize(2);
    }

    @Test
    void backupThatWasKilledIsNoCopyAndIsClearedByTheNext() throws IOException {
        Path good = backUp(DAY);
        Path half = copies.resolve("rainward-2026-07-15.part");
        Files.write(half, new byte[512]);

        assertThat(Backups.in(copies)).containsExactly(good);
        Path next = backUp(DAY.plusDays(2));

        assertThat(half).doesNotExist();
        assertThat(Backups.in(copies)).containsExactly(next, good);
    }

    @Test
    void restoreThatWasKilledIsNotTakenForANewStart() throws IOException {
        Path copy = backUp(DAY);
        Files.move(home.resolve("rainward.db"), folder.resolve("aside"));
        Files.copy(copy, home.resolve("restore.part"));

        assertThatThrownBy(this::fields)
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("a restore was broken off; give it again");

        Backups.restore(home, copy, Hollows.JULY);
        assertThat(fields()).hasSize(2);
    }

    @Test
    void logOfTheOldDatabaseIsNotReadIntoTheRestoredOne() throws IOException {
        Path copy = backUp(DAY);
        Files.write(home.resolve("rainward.db-wal"), new byte[4096]);

        Path aside = Backups.restore(home, copy, Hollows.JULY);

        assertThat(aside.resolveSibling("rainward.db-wal")).hasSize(4096);
        assertThat(fields()).hasSize(2);
    }
}
