package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.Field;
import rainward.store.row.StoreException;

/** What happens when a second, real process is on the same folder, and when one is killed. */
class ProcessesIT {

    @TempDir
    Path home;

    @Test
    void folderHeldByAnotherProcessIsRefusedWithItsNumber() throws Exception {
        Process other = Bystander.start("hold", home);
        try (BufferedReader says = reader(other)) {
            assertThat(says.readLine()).isEqualTo("held FolderLock");

            assertThatThrownBy(() -> FolderLock.take(home))
                    .isInstanceOf(StoreException.class)
                    .hasMessage(home + ": in use by process " + other.pid()
                            + "; stop that service first, or give this one its own folder with"
                            + " --home.");
        } finally {
            other.destroyForcibly().waitFor();
        }
    }

    @Test
    void folderOfAKilledProcessIsFreeAgain() throws Exception {
        Process other = Bystander.start("hold", home);
        try (BufferedReader says = reader(other)) {
            says.readLine();
        }
        other.destroyForcibly().waitFor();

        try (FolderLock mine = FolderLock.take(home)) {
            assertThat(mine).isNotNull();
            assertThatThrownBy(() -> FolderLock.take(home)).isInstanceOf(StoreException.class);
        }
    }

    @Test
    void whatWasConfirmedSurvivesAKill() throws Exception {
        Process other = Bystander.start("write", home);
        List<String> confirmed = new ArrayList<>();
        try (BufferedReader says = reader(other)) {
            for (int i = 0; i < 25; i++) {
                confirmed.add(says.readLine());
            }
            // Unlike the process itself, its handle leaves what was said readable.
            other.toHandle().destroyForcibly();
            says.lines().forEach(confirmed::add);
        }

        try (Store store = Store.open(home)) {
            List<String> kept = store.read(books -> books.fields().all()).stream()
                    .map(Field::name)
                    .toList();
            assertThat(kept).containsAll(confirmed);
            assertThat(store.soundness()).isEqualTo("ok");
        }
    }

    private static BufferedReader reader(Process process) throws IOException {
        return new BufferedReader(
                new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    }
}
