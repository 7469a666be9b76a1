package rainward.daemon.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.settings.Settings;
import rainward.daemon.settings.SettingsOutcome;
import rainward.store.Backups;
import rainward.store.row.StoreException;

/** Which data folder and settings file a command works on. */
public final class Place {

    private static final Path BESIDE_THE_PROGRAM = Path.of("config", "rainward.toml");

    @Option(
            names = "--home",
            paramLabel = "DIR",
            description = "Data folder; else RAINWARD_HOME, else ./rainward-home.")
    @Nullable
    Path home;

    @Option(
            names = "--config",
            paramLabel = "FILE",
            description =
                    "Settings; else rainward.toml in the data folder, else config/rainward.toml.")
    @Nullable
    Path config;

    private InstantSource clock = InstantSource.system();

    /** Works at another time than the PC's. */
    void keepTo(InstantSource other) {
        clock = other;
    }

    public HomeFolder home() {
        return HomeFolder.choose(Optional.ofNullable(home), System.getenv());
    }

    Path settingsFile() {
        if (config != null) {
            return config;
        }
        Path own = home().settings();
        return Files.exists(own) || !Files.exists(BESIDE_THE_PROGRAM) ? own : BESIDE_THE_PROGRAM;
    }

    public SettingsOutcome.Usable read() {
        return Office.settings(settingsFile(), System.getenv());
    }

    /** The office of this place. */
    Office open() {
        return open(read().settings());
    }

    Office open(Settings settings) {
        try {
            return Office.open(home(), settings, clock);
        } catch (StoreException e) {
            throw e.isDamage() ? new StoreException(e.getMessage() + help(settings), e) : e;
        }
    }

    /** What a person can do whose database is damaged. */
    private String help(Settings settings) {
        Path folder = home().path().resolve(settings.keeping().backupFolder());
        return Backups.in(folder).stream()
                .findFirst()
                .map(copy -> " The last one is " + copy + ": stop the service, then `rainward"
                        + " restore last`; what is there now is kept.")
                .orElse(" There is none in " + folder + ".");
    }

    /** The moment. */
    public Instant now() {
        return clock.instant();
    }
}
