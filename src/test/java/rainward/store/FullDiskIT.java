package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.store.journal.Hollows;
import rainward.store.row.StoreException;
import rainward.weather.source.RawPull;

/** A small disk of its own, filled to the last byte or made read-only, and set right again. */
class FullDiskIT {

    private static final LocalDate DAY = LocalDate.of(2026, 7, 14);

    @TempDir
    Path disk;

    @BeforeEach
    void mount() throws IOException, InterruptedException {
        Assumptions.assumeTrue(
                run("mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", disk.toString()),
                "skipped: a disk of 8 MB can be mounted here by nobody but root on Linux");
    }

    @AfterEach
    void unmount() throws IOException, InterruptedException {
        run("umount", disk.toString());
    }

    private static boolean run(String... command) throws IOException, InterruptedException {
        try {
            return new ProcessBuilder(command)
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException noSuchCommand) {
            return false;
        }
    }

    private Path home() {
        return disk.resolve("home");
    }

    private static int write(Store store, int number) {
        byte[] body = new byte[20_000];
        for (int i = 0; i < body.length; i++) {
            body[i] = (byte) new SplittableRandom(number * 31L + i).nextInt();
        }
        return store.inTransaction(books -> {
            books.forecasts()
                    .add(new RawPull(
                            "nws",
                            "https://weather.example/" + number,
                            200,
                            Map.of(),
                            body,
                            Hollows.JULY,
                            Optional.empty()));
            return number;
        });
    }

    private static List<RawPull> kept(Store store) {
        return store.read(
                books -> books.forecasts().between(Instant.EPOCH, Hollows.JULY.plusSeconds(1)));
    }

    private Path fill() throws IOException {
        Path filler = disk.resolve("filler");
        try (OutputStream out = Files.newOutputStream(filler)) {
            for (int i = 0; i < 4096; i++) {
                out.write(new byte[4096]);
            }
        } catch (IOException full) {
            // That was the aim.
        }
        return filler;
    }

    @Test
    void fullDiskIsToldLosesNothingAndWorksAgainWhenThereIsRoom() throws IOException {
        try (Store store = Store.open(home())) {
            store.inTransaction(books -> books.fields().take(Hollows.SURVEY, Hollows.JULY));
            Path copy = Backups.make(store, disk.resolve("copies"), DAY, 5);
            Path filler = fill();
            int[] confirmed = {0};

            assertThatThrownBy(() -> {
                        for (int i = 1; i < 1000; i++) {
                            confirmed[0] = write(store, i);
                        }
                    })
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("the disk is full; make room");
            assertThatThrownBy(
                            () -> Backups.make(store, disk.resolve("copies"), DAY.plusDays(1), 5))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("make room");
            assertThat(kept(store)).hasSize(confirmed[0]);
            assertThat(Backups.in(disk.resolve("copies"))).containsExactly(copy);

            Files.delete(filler);
            write(store, confirmed[0] + 1);
            assertThat(kept(store)).hasSize(confirmed[0] + 1);
            assertThat(store.soundness()).isEqualTo("ok");
            assertThat(Backups.make(store, disk.resolve("copies"), DAY.plusDays(1), 5))
                    .exists();
        }
        assertThat(disk.resolve("copies")).isDirectoryNotContaining("glob:**.part");
    }

    @Test
    void diskThatTurnedReadOnlyIsToldAndUsedAgainWhenItCanBeWritten()
            throws IOException, InterruptedException {
        try (Store store = Store.open(home())) {
            write(store, 1);
        }
        run("mount", "-o", "remount,ro", disk.toString());

        assertThatThrownBy(() -> {
                    try (Store store = Store.open(home())) {
                        write(store, 2);
                    }
                })
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("check");

        run("mount", "-o", "remount,rw", disk.toString());
        try (Store store = Store.open(home())) {
            write(store, 2);
            assertThat(kept(store)).hasSize(2);
        }
    }
}
