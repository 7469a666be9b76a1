package rainward.daemon.setup;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.daemon.command.PlacedCommand;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.store.OwnFile;

/** Writes the first settings file. */
@Command(
        name = "setup",
        description = {
            "Ask five questions and write a settings file that works.",
            "",
            "The file is the annotated example with your answers in it; machines, people and",
            "recipes in it are an invented crew's: change them next. Every question has an option,",
            "so that nobody need be asked. A file that is there is never written over."
        })
public final class SetupCommand extends PlacedCommand {

    private static final int SUBMISSION = 587;

    @Option(names = "--name", paramLabel = "NAME", description = "Of the farm or crew.")
    @Nullable
    String name;

    @Option(names = "--zone", paramLabel = "ZONE", description = "For instance America/Detroit.")
    @Nullable
    String zone;

    @Option(names = "--units", paramLabel = "UNITS", description = "us or metric.")
    @Nullable
    String units;

    @Option(names = "--mail", paramLabel = "ADDRESS", description = "Yours.")
    @Nullable
    String mail;

    @Option(names = "--server", paramLabel = "HOST", description = "host, host:port or none.")
    @Nullable
    String server;

    @Option(
            names = "--password-file",
            paramLabel = "FILE",
            description = "Holds the password of the mail server alone.")
    @Nullable
    Path passwordFile;

    private final BufferedReader in =
            new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));

    @Override
    public Integer call() {
        HomeFolder home = place.home().made();
        Path file = home.settings();
        if (Files.exists(file)) {
            throw Refusal.badInput(file + " is there already and stays as it is: change it by hand,"
                    + " then `rainward check`.");
        }
        write(file, answers(home));
        show(Map.of("settings", file.toString()), () -> words(file));
        return 0;
    }

    private Answers answers(HomeFolder home) {
        Talk talk = new Talk(in, out());
        Map<Question, String> given = given();
        return new Answers(
                talk.answer(Question.NAME, given, Optional.empty()),
                talk.answer(
                        Question.ZONE, given, Optional.of(ZoneId.systemDefault().getId())),
                talk.answer(Question.UNITS, given, Optional.of("us")),
                talk.answer(Question.MAIL, given, Optional.empty()),
                server(
                        talk.answer(Question.SERVER, given, Optional.of(Question.NO_SERVER)),
                        talk,
                        home));
    }

    private Map<Question, String> given() {
        Map<Question, String> given = new EnumMap<>(Question.class);
        put(given, Question.NAME, name);
        put(given, Question.ZONE, zone);
        put(given, Question.UNITS, units);
        put(given, Question.MAIL, mail);
        put(given, Question.SERVER, server);
        return given;
    }

    private static void put(
            Map<Question, String> given, Question question, @Nullable String answer) {
        if (answer != null) {
            given.put(question, answer.strip());
        }
    }

    private Optional<Answers.Server> server(String answer, Talk talk, HomeFolder home) {
        if (answer.equals(Question.NO_SERVER)) {
            return Optional.empty();
        }
        String[] parts = answer.split(":", 2);
        int port = parts.length == 1 ? SUBMISSION : Integer.parseInt(parts[1]);
        return Optional.of(new Answers.Server(parts[0], port, password(talk, home)));
    }

    /** A password is never an argument: others on the machine could read it. */
    private Optional<String> password(Talk talk, HomeFolder home) {
        if (passwordFile != null) {
            return Optional.of(passwordFile.toAbsolutePath().toString());
        }
        if (server != null) {
            return Optional.empty();
        }
        String typed = unseen(talk);
        if (typed.isEmpty()) {
            return Optional.empty();
        }
        OwnFile.write(home.path().resolve("mail.password"), typed + "\n");
        return Optional.of("mail.password");
    }

    /**
     * Without a screen there is no console: 17 and 25 tell so by null, what is piped is read then.
     */
    @SuppressWarnings("SystemConsoleNull")
    private String unseen(Talk talk) {
        talk.out()
                .print("Its password for your address (it is kept in a file that only you can"
                        + " read); empty: it asks for none ");
        talk.out().flush();
        Console console = System.console();
        char[] typed = console == null ? null : console.readPassword();
        return typed == null ? talk.line().orElse("") : new String(typed);
    }

    /** Only what the program can read itself becomes the settings file. */
    private static void write(Path file, Answers answers) {
        Path part = file.resolveSibling("rainward.toml.part");
        try {
            OwnFile.write(part, Example.with(answers));
            Office.settings(part, System.getenv());
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw Refusal.badWorld(file + " cannot be written (" + e + "): check its folder.");
        } finally {
            part.toFile().delete();
        }
    }

    private static String words(Path file) {
        return """
                %s is written. Machines, people and recipes in it are an invented crew's.
                1. Change them to yours.
                2. rainward check
                3. rainward import fields.geojson
                4. rainward run""".formatted(file);
    }
}
