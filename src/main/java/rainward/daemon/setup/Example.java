package rainward.daemon.setup;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;

/** The annotated example, with the answers in place of the invented crew's. */
final class Example {

    private static final String FILE = "/config/rainward.toml";

    private Example() {}

    static String with(Answers answers) {
        String text = replaced(read(), "name", answers.name());
        text = replaced(text, "zone", answers.zone());
        text = replaced(text, "units", answers.units());
        text = replaced(text, "contact", answers.mail());
        text = text.replaceFirst(
                "for the invented crew of .*",
                "of " + Matcher.quoteReplacement(answers.name()) + ".");
        return text.stripTrailing() + "\n"
                + answers.server().map(s -> post(answers, s)).orElse("");
    }

    /** The first line of a key, its comment kept. */
    private static String replaced(String text, String key, String value) {
        return text.replaceFirst(
                "(?m)^" + key + " = \"[^\"]*\"",
                Matcher.quoteReplacement(key + " = " + quoted(value)));
    }

    private static String quoted(String value) {
        return '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    private static String post(Answers answers, Answers.Server server) {
        String login = server.passwordFile()
                .map(file -> "user = " + quoted(answers.mail()) + "\npassword_file = "
                        + quoted(file) + "\n")
                .orElse("");
        return """

                # Written by setup; every key of these tables is told of above.
                [mail]
                host = %s
                port = %d
                security = %s
                %sfrom = %s

                [[recipient]]
                name = "office"
                address = %s
                """.formatted(
                        quoted(server.host()),
                        server.port(),
                        quoted(server.security()),
                        login,
                        quoted(answers.mail()),
                        quoted(answers.mail()));
    }

    private static String read() {
        try (InputStream in = Example.class.getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException("the program brings no " + FILE);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + FILE, e);
        }
    }
}
