import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/**
 * Makes the program with a runtime of its own, and the host's kind of package around it: .deb on
 * Debian and its kin, .msi on Windows, .pkg on macOS. Run by the build with the JDK that is to be
 * shipped: {@code java Packaging.java TARGET VERSION}.
 */
public final class Packaging {

    /** Found by name only, so that jdeps does not see it: elliptic curves, sockets, zip files. */
    private static final String BY_NAME = "jdk.crypto.ec,jdk.net,jdk.zipfs";

    /** Small and quiet: one collector thread, no more heap than a farm needs. */
    private static final List<String> JVM = List.of(
            "-Xmx320m",
            "-Xms32m",
            "-Xss512k",
            "-XX:+UseSerialGC",
            "-XX:-UsePerfData",
            "-XX:MinHeapFreeRatio=10",
            "-XX:MaxHeapFreeRatio=30",
            "-XX:-CreateCoredumpOnCrash",
            "-Xlog:disable",
            "-Djava.awt.headless=true");

    private static final FileTime JAR_TIME = FileTime.from(Instant.parse("2026-01-01T00:00:00Z"));

    private final Path target;
    private final String version;
    private final Path image;

    private Packaging(Path target, String version) {
        this.target = target;
        // Packages know numbers only.
        this.version = version.replaceAll("[^0-9.].*", "");
        this.image = target.resolve("image");
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (Runtime.version().feature() < 25) {
            throw new IOException("packages are made with JDK 25 or newer, this is "
                    + Runtime.version() + "; the program itself runs on 17");
        }
        Packaging packaging = new Packaging(Path.of(args[0]).toAbsolutePath(), args[1]);
        packaging.image();
        packaging.cache();
        packaging.wrap();
    }

    private static String system() {
        String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        return name.contains("win") ? "windows" : name.contains("mac") ? "macos" : "linux";
    }

    private static String tool(String name) {
        return Path.of(System.getProperty("java.home"), "bin", name).toString();
    }

    private static String launcher() {
        return system().equals("windows") ? "Rainward" : "rainward";
    }

    /** What the program uses of the runtime; a list by hand was short of a module one day. */
    private String modules() throws IOException, InterruptedException {
        List<String> command = List.of(
                tool("jdeps"),
                "--ignore-missing-deps",
                "--multi-release",
                "17",
                "--print-module-deps",
                target.resolve("rainward.jar").toString());
        System.out.println("> " + String.join(" ", command));
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String told = new String(process.getInputStream().readAllBytes(), UTF_8).strip();
        if (process.waitFor() != 0) {
            throw new IOException("jdeps ended with " + process.exitValue() + ": " + told);
        }
        return told + "," + BY_NAME;
    }

    /** The program with its own runtime, in a folder. */
    private void image() throws IOException, InterruptedException {
        delete(image);
        Path input = target.resolve("package-input");
        delete(input);
        Files.createDirectories(input);
        copy(target.resolve("rainward.jar"), input);
        copy(target.resolve("rainward-parts.cdx.json"), input);
        copy(target.resolve("LICENCES-OF-PARTS.txt"), input);
        copy(Path.of("LICENSE"), input);
        copy(Path.of("src/site/service.md"), input);
        for (String own : List.of("rainward.service", "rainward-office", "rainward-task.xml")) {
            Path file = Path.of("src/package", system(), own);
            if (Files.exists(file)) {
                copy(file, input).toFile().setExecutable(own.equals("rainward-office"), false);
            }
        }
        List<String> command = new ArrayList<>(List.of(
                tool("jpackage"),
                "--type",
                "app-image",
                "--name",
                launcher(),
                "--app-version",
                version,
                "--input",
                input.toString(),
                "--main-jar",
                "rainward.jar",
                "--add-modules",
                modules(),
                "--jlink-options",
                "--strip-debug --no-header-files --no-man-pages --generate-cds-archive",
                "--dest",
                image.toString()));
        for (String option : JVM) {
            command.add("--java-options");
            command.add(option);
        }
        if (system().equals("windows")) {
            command.add("--win-console");
        }
        run(command);
    }

    private Path root() {
        Path root = image.resolve(system().equals("macos") ? launcher() + ".app" : launcher());
        return system().equals("macos") ? root.resolve("Contents") : root;
    }

    private Path app() {
        return switch (system()) {
            case "windows", "macos" -> root().resolve("app");
            default -> root().resolve("lib/app");
        };
    }

    /** What a start needs, read and linked once and laid down as it lies in memory. */
    private void cache() throws IOException, InterruptedException {
        Path home = target.resolve("package-training");
        delete(home);
        Path bin = root().resolve(
                        switch (system()) {
                            case "windows" -> "Rainward.exe";
                            case "macos" -> "MacOS/rainward";
                            default -> "bin/rainward";
                        });
        // The cache holds for a jar of this time only, and installing gives it another; what
        // is run after installing puts this one back.
        Files.setLastModifiedTime(app().resolve("rainward.jar"), JAR_TIME);
        run(List.of(bin.toString(), "demo", "--once", "--home", home.toString()));
        Path settings = app().resolve(launcher() + ".cfg");
        String kept = Files.readString(settings);
        Path seen = target.resolve("package-training.conf");
        Files.deleteIfExists(seen);
        Files.writeString(
                settings, with(kept, "-XX:AOTMode=record", "-XX:AOTConfiguration=" + seen));
        once(bin, home);
        boolean wrote = Files.exists(seen);
        if (wrote) {
            Files.writeString(
                    settings,
                    with(
                            kept,
                            "-XX:AOTMode=create",
                            "-XX:AOTConfiguration=" + seen,
                            "-XX:AOTCache=" + app().resolve("rainward.aot")));
            run(List.of(bin.toString(), "--version"));
        } else {
            // Windows ends a process without a word; it then starts a second later than it could.
            System.out.println("What the start needs was not written down: it takes longer.");
        }
        Files.writeString(settings, wrote ? with(kept, "-XX:AOTCache=$APPDIR/rainward.aot") : kept);
        options(wrote);
        delete(home);
    }

    /** The same for the runtime itself: the launcher asks dpkg about itself at each start. */
    private void options(boolean cached) throws IOException {
        if (system().equals("linux")) {
            List<String> options = new ArrayList<>(JVM);
            if (cached) {
                options.add("-XX:AOTCache=/opt/rainward/lib/app/rainward.aot");
            }
            options.addAll(List.of("-jar", "/opt/rainward/lib/app/rainward.jar"));
            Files.write(app().resolve("rainward.options"), options);
        }
    }

    private static String with(String settings, String... options) {
        String first = "java-options=" + JVM.get(0);
        return settings.replace(
                first, "java-options=" + String.join("\njava-options=", options) + "\n" + first);
    }

    /** Starts the service, waits until it is ready, and stops it; no package without that. */
    private static void once(Path bin, Path home) throws IOException, InterruptedException {
        // The demo's crew, with nobody to ask and a page that is in no one's way.
        Path settings = home.resolve("rainward.toml");
        String nobody = "http://localhost:9";
        Files.writeString(
                settings,
                Files.readString(Path.of("config/demo.toml"))
                        + "\n[board]\nport = 18640\n\n[weather.address]\nnws = \"" + nobody
                        + "\"\nacis = \"" + nobody + "\"\n");
        Process service = new ProcessBuilder(bin.toString(), "run", "--home", home.toString())
                .redirectErrorStream(true)
                .start();
        BufferedReader said = service.inputReader();
        boolean ready = false;
        for (String line = said.readLine(); line != null; line = said.readLine()) {
            System.out.println("  " + line);
            if (line.startsWith("Ready")) {
                ready = true;
                TimeUnit.SECONDS.sleep(5);
                // Unlike the process itself, its handle leaves what it says readable.
                service.toHandle().destroy();
            }
        }
        service.waitFor();
        if (!ready) {
            throw new IOException("the packaged service never got ready, see its words above");
        }
    }

    /** The package that the host's own tools install. */
    private void wrap() throws IOException, InterruptedException {
        Path resources = target.resolve("package-resources");
        delete(resources);
        Files.createDirectories(resources);
        Path own = Path.of("src/package", system());
        if (system().equals("linux")) {
            for (String script : List.of("preinst", "postinst", "prerm", "postrm")) {
                Files.writeString(
                        resources.resolve(script),
                        Files.readString(own.resolve(script))
                                .replace("APPLICATION_VERSION", version));
            }
        }
        List<String> command = new ArrayList<>(List.of(
                tool("jpackage"),
                "--app-image",
                image.resolve(launcher()).toString(),
                "--name",
                launcher(),
                "--app-version",
                version,
                "--description",
                "Which field to seed next, so that it lies seeded when the rain comes",
                "--license-file",
                "LICENSE",
                "--resource-dir",
                resources.toString(),
                "--dest",
                target.toString()));
        if (system().equals("linux")) {
            command.addAll(List.of("--type", "deb", "--linux-deb-maintainer", "yard@localhost"));
        }
        run(command);
    }

    private static Path copy(Path file, Path folder) throws IOException {
        return Files.copy(
                file, folder.resolve(file.getFileName()), StandardCopyOption.COPY_ATTRIBUTES);
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
                    throws IOException {
                file.toFile().setWritable(true);
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path dir, IOException failure)
                    throws IOException {
                Files.delete(dir);
                return FileVisitResult.CONTINUE;
            }
        });
    }

    private static void run(List<String> command) throws IOException, InterruptedException {
        System.out.println("> " + String.join(" ", command));
        Process process = new ProcessBuilder(command).inheritIO().start();
        if (process.waitFor() != 0) {
            throw new IOException(command.get(0) + " ended with " + process.exitValue());
        }
    }
}
