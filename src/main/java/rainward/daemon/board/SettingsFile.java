package rainward.daemon.board;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;

/** The settings file of the data folder, changed whole and only where it has no fault. */
final class SettingsFile {

    private final Path file;

    SettingsFile(Office office) {
        this.file = office.home().settings();
    }

    Optional<String> text() {
        try {
            return Files.exists(file) ? Optional.of(Files.readString(file)) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /**
     * Keeps another text; the one before stays beside it.
     *
     * @throws Refusal with every fault, each with its line
     */
    String keep(String text) {
        if (text().isEmpty()) {
            throw Refusal.badInput("The settings do not lie in the data folder; change them there"
                    + " where they lie.");
        }
        String clean = text.replace("\r\n", "\n");
        Path fresh = file.resolveSibling("rainward.new.toml");
        try {
            Files.writeString(fresh, clean.endsWith("\n") ? clean : clean + "\n");
            Office.settings(fresh, System.getenv());
            Files.copy(
                    file,
                    file.resolveSibling("rainward.before.toml"),
                    StandardCopyOption.REPLACE_EXISTING);
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
            return "The settings are kept; they hold from the next start of the service on.";
        } catch (IOException e) {
            throw Refusal.badWorld("The settings cannot be written: " + e.getMessage());
        } finally {
            remove(fresh);
        }
    }

    private static void remove(Path fresh) {
        try {
            Files.deleteIfExists(fresh);
        } catch (IOException e) {
            fresh.toFile().deleteOnExit();
        }
    }
}
