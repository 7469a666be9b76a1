package rainward.daemon.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever the settings file holds, reading it ends in settings or in sentences. */
class MangledSettingsTest {

    @TempDir
    Path folder;

    @Test
    void mangledSettingsEndInWords() throws IOException {
        SplittableRandom any = new SplittableRandom(20260714);
        byte[] whole = Files.readAllBytes(Crews.EXAMPLE);
        Path file = folder.resolve("rainward.toml");
        int faulty = 0;
        for (int i = 0; i < 400; i++) {
            Files.write(file, mangled(whole.clone(), any));
            SettingsOutcome[] outcome = new SettingsOutcome[1];
            assertThatCode(() -> outcome[0] = Crews.reader().read(file))
                    .as(() -> "on: " + text(file))
                    .doesNotThrowAnyException();
            if (outcome[0] instanceof SettingsOutcome.SettingsFaults faults) {
                faulty++;
                assertThat(faults.faults()).isNotEmpty();
            }
        }
        assertThat(faulty).isBetween(40, 399);
    }

    private static byte[] mangled(byte[] bytes, SplittableRandom any) {
        int changes = 1 + any.nextInt(6);
        for (int i = 0; i < changes; i++) {
            int at = any.nextInt(bytes.length);
            int length = Math.min(1 + any.nextInt(8), bytes.length - at);
            switch (any.nextInt(3)) {
                case 0 -> bytes[at] = (byte) any.nextInt(256);
                case 1 -> bytes[at] = (byte) "\"'[]{}=#.,-0e9\n\\".charAt(any.nextInt(16));
                default ->
                    System.arraycopy(
                            bytes.clone(), any.nextInt(bytes.length - length), bytes, at, length);
            }
        }
        return bytes;
    }

    private static String text(Path file) {
        try {
            return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
