package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.Field;

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

    private static void scratch(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            int half = (int) channel.size() / 2;
            channel.write(ByteBuffer.wrap(new byte[half]), half);
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
    void damagedCopyIsNotPutBack() throws IOException {
        Path copy = backUp(DAY);
        scratch(copy);

        assertThatThrownBy(() -> Backups.restore(home, copy, Hollows.JULY))
                .isInstanceOf(StoreException.class)
                .hasMessageStartingWith(copy + ": ")
                .hasMessageContaining("damaged");
        assertThat(fields()).hasSize(2);
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
}
