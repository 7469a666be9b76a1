package rainward.daemon;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;

/** A person at the command line, with the invented crew's settings and a data folder. */
final class Desk {

    private final Path home;
    private final Instant now;

    Desk(Path home, Instant now) {
        this.home = home;
        this.now = now;
    }

    /** The same data folder at another time. */
    Desk at(Instant later) {
        return new Desk(home, later);
    }

    /** Lays the demo's settings down, with the weather of a server on this machine. */
    Desk withWeatherFrom(URI server, String more) {
        return withSettings(crew() + """

                [weather.address]
                nws = "%s"
                acis = "%s"
                met_norway = "%s"
                """.formatted(server, server, server) + more);
    }

    Desk withSettings(String toml) {
        try {
            Files.createDirectories(home);
            Files.writeString(settings(), toml);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Path settings() {
        return home.resolve("rainward.toml");
    }

    static String crew() {
        try {
            return Files.readString(Path.of("config", "demo.toml"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What a command said, and how it ended. */
    record Said(int exitCode, String out, String err) {

        JsonNode json() {
            try {
                return new ObjectMapper().readTree(out);
            } catch (JsonProcessingException e) {
                throw new AssertionError("no JSON: " + out + err, e);
            }
        }
    }

    /** Types a command. */
    Said type(String... words) {
        List<String> all = new ArrayList<>(List.of(words));
        all.add("--home");
        all.add(home.toString());
        return plain(now, all.toArray(String[]::new));
    }

    /** Types a command that needs no data folder. */
    static Said plain(Instant now, String... words) {
        var out = new StringWriter();
        var err = new StringWriter();
        int exitCode = Main.commandLine(InstantSource.fixed(now))
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(words);
        return new Said(exitCode, out.toString(), err.toString());
    }
}
