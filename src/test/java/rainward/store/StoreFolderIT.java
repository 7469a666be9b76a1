package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoreFolderIT {

    @TempDir
    Path home;

    private Path part(String name, Duration age) throws IOException {
        Path part = Files.writeString(home.resolve("native").resolve(name), "x");
        Files.setLastModifiedTime(part, FileTime.from(Instant.now().minus(age)));
        return part;
    }

    @Test
    void partsLeftByAKilledProcessAreCleared() throws IOException {
        Files.createDirectories(home.resolve("native"));
        Path old = part("sqlite-3.54.1-left-behind.so", Duration.ofHours(5));
        Path fresh = part("sqlite-3.54.1-just-unpacked.so", Duration.ofSeconds(5));

        Store.open(home).close();

        assertThat(old).doesNotExist();
        assertThat(fresh).exists();
    }
}
