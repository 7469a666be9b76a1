package rainward.mail;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.brief.SampleCrew;
import rainward.brief.post.Letter;
import rainward.brief.post.Outgoing;
import rainward.brief.post.Recipient;
import rainward.farm.UnitSystem;

/** Mails and settings that tests share. */
final class Mails {

    static final Instant DAWN = Instant.parse("2026-07-16T09:00:00Z");

    static final SmtpSettings.Sender SENDER =
            new SmtpSettings.Sender("Long Lake Seeding", "rainward@crew.example");

    static final Recipient BOYD = recipient("boyd@crew.example");

    private Mails() {}

    static Recipient recipient(String address) {
        return new Recipient(
                "Boyd",
                Recipient.Address.mail(address),
                Recipient.Wants.EVERYTHING,
                UnitSystem.US_CUSTOMARY);
    }

    static Letter letter(String event, String subject, String text) {
        return new Letter(
                event,
                List.of(),
                subject,
                new Letter.Written(DAWN, SampleCrew.DETROIT),
                Letter.Body.ofText(text));
    }

    static Outgoing plain(String event, String address) {
        byte[] bytes = new MimeLetter(SENDER, SampleCrew.FARM)
                .bytes(letter(event, "Order of " + event, "till Mill 3\n"), recipient(address));
        return outgoing(event, address, bytes);
    }

    static Outgoing outgoing(String event, String address, byte[] content) {
        return new Outgoing(
                new Outgoing.Key(event, address),
                Outgoing.Channel.MAIL,
                event,
                content,
                new Outgoing.Times(DAWN, DAWN, DAWN.plus(Duration.ofHours(24))));
    }

    static SmtpSettings settings(int port, SmtpSettings.Security security) {
        return new SmtpSettings(
                new SmtpSettings.Server("localhost", port),
                security,
                Optional.empty(),
                SENDER,
                Duration.ofSeconds(1));
    }

    static SmtpSettings withLogin(SmtpSettings settings, String password) {
        return new SmtpSettings(
                settings.server(),
                settings.security(),
                Optional.of(new SmtpSettings.Login("crew", password)),
                settings.sender(),
                Duration.ofSeconds(5));
    }

    static String text(byte[] mail) {
        return new String(mail, StandardCharsets.UTF_8);
    }
}
