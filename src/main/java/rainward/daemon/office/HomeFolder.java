package rainward.daemon.office;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import rainward.store.OwnFile;
import rainward.store.row.StoreException;

/**
 * The data folder: everything that Rainward keeps lies in it.
 *
 * @param path the folder
 */
public record HomeFolder(Path path) {

    /** Environment variable that names the folder. */
    public static final String VARIABLE = "RAINWARD_HOME";

    /**
     * The folder that holds: the one asked for, else the environment's, else {@code rainward-home}
     * where the program was started.
     */
    public static HomeFolder choose(Optional<Path> asked, Map<String, String> environment) {
        return new HomeFolder(asked.or(() -> Optional.ofNullable(environment.get(VARIABLE))
                        .filter(text -> !text.isBlank())
                        .map(Path::of))
                .orElse(Path.of("rainward-home"))
                .toAbsolutePath()
                .normalize());
    }

    /** Makes the folder where it is missing. */
    public HomeFolder made() {
        try {
            OwnFile.folder(path);
            return this;
        } catch (StoreException e) {
            throw Refusal.badInput("The data folder " + path + " cannot be made (" + e.getMessage()
                    + "): choose another with --home DIR or " + VARIABLE + ".");
        }
    }

    /** Triggers of the schedule. */
    public Path schedule() {
        return path.resolve("schedule.db");
    }

    /** Logs of the service. */
    public Path logs() {
        return path.resolve("logs");
    }

    /** Settings, where none are named on the command line. */
    public Path settings() {
        return path.resolve("rainward.toml");
    }
}
