package rainward.daemon.settings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds secrets where the settings say: in a file or in an environment variable, never in the
 * settings themselves.
 *
 * @param environment variables of the process
 * @param settings file, against whose folder paths are taken
 */
record SecretReader(Map<String, String> environment, Path settings) {

    /**
     * The secret that {@code name_file} or {@code name_env} points to; empty where neither does.
     */
    Optional<Secret> secret(Section section, String name) {
        String remedy = "must be the path of a file that holds only the " + name;
        Optional<String> file = section.maybeText(name + "_file", remedy);
        Optional<String> variable =
                section.maybeText(name + "_env", "must be the name of an environment variable");
        if (file.isPresent() && variable.isPresent()) {
            section.wrong(name + "_env", "leave out either this or " + name + "_file");
            return Optional.empty();
        }
        return file.isPresent()
                ? fromFile(section, name, file.get())
                : variable.flatMap(v -> fromEnvironment(section, name, v));
    }

    private Optional<Secret> fromEnvironment(Section section, String name, String variable) {
        String value = environment.getOrDefault(variable, "").strip();
        if (value.isEmpty()) {
            section.reading()
                    .fault(
                            section.path(name + "_env"),
                            "names the variable " + variable + ", which is not set",
                            "set it for the service, or use " + name + "_file");
            return Optional.empty();
        }
        return Optional.of(new Secret(value));
    }

    private Optional<Secret> fromFile(Section section, String name, String path) {
        Path file = settings.toAbsolutePath().resolveSibling(path);
        String key = section.path(name + "_file");
        try {
            String value = Files.readString(file).strip();
            if (value.isEmpty() || value.lines().count() > 1) {
                section.reading()
                        .fault(
                                key,
                                "names " + file + ", which is empty or has several" + " lines",
                                "it must hold the " + name + " alone, on one line");
                return Optional.empty();
            }
            if (readableByOthers(file)) {
                section.reading()
                        .warn(
                                key,
                                "names " + file + ", which others can read",
                                "take their right away: chmod 600 " + file);
            }
            return Optional.of(new Secret(value));
        } catch (IOException e) {
            section.reading()
                    .fault(
                            key,
                            "names " + file + ", which cannot be read",
                            "write the " + name + " into it and make it yours alone (chmod 600)");
            return Optional.empty();
        }
    }

    private static boolean readableByOthers(Path file) throws IOException {
        if (!Files.getFileStore(file).supportsFileAttributeView("posix")) {
            return false;
        }
        Set<PosixFilePermission> rights = Files.getPosixFilePermissions(file);
        return rights.contains(PosixFilePermission.GROUP_READ)
                || rights.contains(PosixFilePermission.OTHERS_READ);
    }
}
