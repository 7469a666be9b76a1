package rainward.daemon.settings;

import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import rainward.brief.post.Outgoing;
import rainward.brief.post.Recipient;
import rainward.farm.Crew;
import rainward.farm.Machine;
import rainward.farm.NearestName;
import rainward.farm.UnitSystem;
import rainward.mail.SmtpSettings;
import rainward.window.QuietHours;

/**
 * The brief's hour, the mail server and who gets what.
 *
 * @param secrets where passwords may be
 * @param usual units of those who do not say
 */
record PostReader(SecretReader secrets, UnitSystem usual) {

    /** Enough to catch a slip of the pen; whether it exists only the server knows. */
    private static final Pattern MAIL =
            Pattern.compile("[^@\\s<>\",;:]+@[^@\\s<>\",;:]+\\.[^@\\s.]+");

    private static final String MAIL_REMEDY =
            "must be a mail address, for instance \"yard@farm.example\"";

    Settings.Post post(Section root, Crew crew) {
        Section brief = root.table("brief");
        LocalTime at = brief.time("time", LocalTime.of(5, 0));
        brief.end();
        Optional<Settings.MailServer> server = server(root);
        Map<String, Secret> hookSecrets = new HashMap<>();
        List<Recipient> recipients = new ArrayList<>();
        List<Section> sections = root.tables("recipient");
        for (Section section : sections) {
            recipients.add(recipient(section, crew, hookSecrets));
        }
        WorkReader.once(sections, recipients.stream().map(Recipient::name).toList());
        boolean mails =
                recipients.stream().anyMatch(r -> r.address().channel() == Outgoing.Channel.MAIL);
        if (mails && server.isEmpty()) {
            root.reading()
                    .fault(
                            "recipient",
                            "asks for mail, and there is no mail server",
                            "describe one under [mail]");
        }
        return new Settings.Post(at, server, recipients, hookSecrets);
    }

    private Optional<Settings.MailServer> server(Section root) {
        boolean there = root.has("mail");
        Section mail = root.table("mail");
        if (!there) {
            return Optional.empty();
        }
        Settings.Security security = mail.choice("security", Settings.Security.STARTTLS);
        String host = mail.text("host", "must be the name of your mail server");
        Settings.MailServer read = new Settings.MailServer(
                host,
                (int) mail.whole("port", new Bounds.Whole(port(security), 1, 65_535)),
                security,
                login(mail, security, host),
                address(mail, "from"),
                mail.span(
                        "answer_within",
                        Bounds.Span.usually(
                                Duration.ofSeconds(30),
                                Duration.ofSeconds(2),
                                Duration.ofMinutes(5))),
                mail.span(
                        "tried_for",
                        Bounds.Span.usually(
                                Duration.ofHours(24), Duration.ofHours(1), Duration.ofDays(5))));
        mail.end();
        return Optional.of(read);
    }

    /** Submission ports of RFC 8314 and RFC 6409. */
    private static int port(Settings.Security security) {
        return switch (security) {
            case STARTTLS -> 587;
            case TLS -> 465;
            case NONE -> 25;
        };
    }

    private Optional<Settings.Login> login(Section mail, Settings.Security security, String host) {
        Optional<String> user = mail.maybeText("user", "must be the name that the server knows");
        Optional<Secret> password = secrets.secret(mail, "password");
        boolean named = mail.has("password_file") || mail.has("password_env");
        if (user.isPresent() && !named) {
            mail.wrong("user", "needs a password_file or password_env beside it");
        }
        if (user.isEmpty() && named) {
            mail.wrong("user", "must be given where there is a password");
        }
        if (user.isPresent()
                && security == Settings.Security.NONE
                && !SmtpSettings.isThisMachine(host)) {
            mail.wrong(
                    "security",
                    "must be \"starttls\" or \"tls\" where there is a password and the server is"
                            + " another machine");
        }
        return user.isPresent() && password.isPresent()
                ? Optional.of(new Settings.Login(user.get(), password.get()))
                : Optional.empty();
    }

    private static String address(Section section, String key) {
        String address = section.text(key, MAIL_REMEDY);
        if (!address.equals(Section.NAMELESS) && !MAIL.matcher(address).matches()) {
            section.wrong(key, MAIL_REMEDY);
        }
        return address;
    }

    private Recipient recipient(Section section, Crew crew, Map<String, Secret> hookSecrets) {
        String name = section.name("name");
        Recipient.Address address = way(section);
        secrets.secret(section, "secret").ifPresent(s -> hookSecrets.put(address.where(), s));
        Recipient read =
                new Recipient(name, address, wants(section, crew), units(section), quiet(section));
        section.end();
        return read;
    }

    private static Recipient.Address way(Section section) {
        boolean hook = section.has("webhook");
        if (hook && section.has("address")) {
            section.wrong("webhook", "leave out either this or address");
        }
        if (!hook) {
            return Recipient.Address.mail(address(section, "address"));
        }
        String remedy = "must be the address to call: https://..., or http://localhost...";
        String text = section.text("webhook", remedy);
        if (!text.equals(Section.NAMELESS) && WayReader.address(text).isEmpty()) {
            section.wrong("webhook", remedy);
        }
        return Recipient.Address.webhook(text);
    }

    private static Recipient.Wants wants(Section section, Crew crew) {
        Recipient.Share share = section.choice("gets", Recipient.Share.ALL);
        Recipient.Form form = section.choice("form", Recipient.Form.FULL);
        List<String> machines = section.names("machines");
        List<String> known = crew.machines().stream().map(Machine::name).toList();
        for (String machine : machines) {
            if (!known.contains(machine)) {
                section.wrong(
                        "machines",
                        "there is no machine \"" + machine + "\", "
                                + NearestName.of(machine, known)
                                        .map(near -> "the nearest is \"" + near + "\"")
                                        .orElse("known are " + String.join(", ", known)));
            }
        }
        if (share == Recipient.Share.OWN_MACHINES && machines.isEmpty()) {
            section.wrong(
                    "machines",
                    "must name the machines whose lines to send, since gets ="
                            + " \"own-machines\"");
            return new Recipient.Wants(Recipient.Share.ALL, form, Set.of());
        }
        return new Recipient.Wants(share, form, Set.copyOf(machines));
    }

    private static Recipient.Quiet quiet(Section section) {
        boolean begins = section.has("quiet_from");
        if (begins != section.has("quiet_to")) {
            section.wrong(
                    begins ? "quiet_to" : "quiet_from",
                    "must be given too: quiet hours have both ends, for instance from \"21:00\""
                            + " to \"05:00\"");
        }
        return new Recipient.Quiet(
                new QuietHours(
                        section.time("quiet_from", LocalTime.MIDNIGHT),
                        section.time("quiet_to", LocalTime.MIDNIGHT)),
                section.span("quiet_broken_for", OrderReader.QUIET_BROKEN_FOR));
    }

    private UnitSystem units(Section section) {
        return section.has("units")
                ? FarmReader.units(section.choice("units", FarmReader.Units.class))
                : usual;
    }
}
