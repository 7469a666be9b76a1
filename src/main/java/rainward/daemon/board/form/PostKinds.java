package rainward.daemon.board.form;

import static rainward.daemon.board.form.Kinds.Key.amount;
import static rainward.daemon.board.form.Kinds.Key.anyOf;
import static rainward.daemon.board.form.Kinds.Key.oneOf;
import static rainward.daemon.board.form.Kinds.Key.words;

import java.util.List;
import rainward.brief.post.Recipient;
import rainward.daemon.board.form.Kinds.Kind;
import rainward.daemon.settings.Settings;

/** Who gets mail, and by which way it goes out. */
final class PostKinds {

    /** Mail goes out where this table stands. */
    static final String MAIL = "mail";

    private PostKinds() {}

    static List<Kind> all() {
        return List.of(recipient(), mail());
    }

    private static Kind recipient() {
        return new Kind(
                "recipient",
                "Who gets mail",
                "recipient",
                "name",
                List.of(
                        words("name", "Name", "as the crew says it"),
                        words("address", "Mail address", "or else a web address below"),
                        words("webhook", "Web address that is called", "https://..."),
                        words("secret_file", "File that holds what calls are signed with", ""),
                        words("secret_env", "or variable that holds it", ""),
                        oneOf("gets", "Gets", "left open: all").from(Recipient.Share.values()),
                        anyOf("machines", "Lines of these machines", "with own-machines")
                                .from(Choices.MACHINES),
                        oneOf("form", "Form", "left open: full; short: 160 characters")
                                .from(Recipient.Form.values()),
                        oneOf("units", "Units", "left open: those of the farm")
                                .from("us", "metric"),
                        words("quiet_from", "Quiet from", "for instance 20:00"),
                        words("quiet_to", "Quiet until", "for instance 04:30"),
                        words(
                                "quiet_broken_for",
                                "Quiet broken by what is of use for no longer than",
                                "left open: 2 h")));
    }

    private static Kind mail() {
        return new Kind(
                MAIL,
                "The way out for mail",
                "the way out",
                "",
                List.of(
                        words("host", "Mail server", "for instance mail.burroak.example"),
                        oneOf("security", "Security", "left open: starttls")
                                .from(Settings.Security.values()),
                        amount("port", "Port", "left open: the usual one"),
                        words("user", "User", "left open: the server does not ask"),
                        words(
                                "password_file",
                                "File that holds the password",
                                "beside the settings; the password is never written here"),
                        words("password_env", "or variable that holds it", ""),
                        words("from", "Mail comes from", "for instance yard@burroak.example"),
                        words("answer_within", "Longest wait for the server", "left open: 30 s"),
                        words("tried_for", "Given up after", "left open: 24 h")));
    }
}
