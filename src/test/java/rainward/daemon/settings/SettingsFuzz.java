package rainward.daemon.settings;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.settings.text.SettingsText;

/** Settings files, grown by coverage: each is usable, or all its faults are told. */
class SettingsFuzz {

    @TempDir
    static Path folder;

    @FuzzTest(maxDuration = "10m")
    void toml(byte[] bytes) throws IOException {
        Path file = Files.write(folder.resolve("s.toml"), bytes);
        SettingsOutcome outcome = Crews.reader().read(file);
        if (outcome instanceof SettingsOutcome.SettingsFaults told
                && (told.faults().isEmpty()
                        || told.faults().stream().anyMatch(f -> f.words().isBlank()))) {
            throw new IllegalStateException("refused without a word");
        }
        if (outcome instanceof SettingsOutcome.Usable) {
            changed(new String(bytes, StandardCharsets.UTF_8));
        }
    }

    /** What the board does to a file that is in use. */
    private static void changed(String text) {
        try {
            SettingsText after = new SettingsText(text).with("farm.name", "\"Oak\"");
            if (!after.at("farm.name").asText().equals("Oak")) {
                throw new IllegalStateException("written, not read again");
            }
        } catch (SettingsText.CannotChange refused) {
            if (refused.getMessage() == null || refused.getMessage().isBlank()) {
                throw new IllegalStateException("refused without a word", refused);
            }
        }
    }
}
