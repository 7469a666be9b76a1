package rainward.mail;

import jakarta.activation.DataHandler;
import jakarta.mail.BodyPart;
import jakarta.mail.MessagingException;
import jakarta.mail.Multipart;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.internet.MimeUtility;
import jakarta.mail.util.ByteArrayDataSource;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Properties;
import rainward.brief.post.Letter;
import rainward.brief.post.Letter.Body;
import rainward.brief.post.Recipient;

/**
 * A letter as a mail: RFC 5322 headers over a MIME body of plain text and page with its pictures
 * (RFC 2045 and 2046 multipart/alternative, 2387 related), the calendar attached.
 */
public final class MimeLetter {

    /** RFC 5322 3.3, in the farm's zone. */
    private static final DateTimeFormatter DATE =
            DateTimeFormatter.ofPattern("EEE, d MMM yyyy HH:mm:ss Z", Locale.US);

    private static final String UTF_8 = StandardCharsets.UTF_8.name();

    private final SmtpSettings.Sender sender;
    private final String list;

    /**
     * Mails of one farm.
     *
     * @param sender whom they come from
     * @param list what the stream of mails is called
     */
    public MimeLetter(SmtpSettings.Sender sender, String list) {
        this.sender = sender;
        this.list = list;
    }

    /** The whole mail as it goes over the wire. */
    public byte[] bytes(Letter letter, Recipient recipient) {
        try {
            MimeMessage mail = new FixedIdMessage();
            headers(mail, letter, recipient);
            content(mail, letter.body());
            mail.saveChanges();
            var out = new ByteArrayOutputStream();
            mail.writeTo(out);
            return out.toByteArray();
        } catch (MessagingException e) {
            throw new IllegalArgumentException(
                    "no mail can be made of " + letter.event() + " for "
                            + recipient.address().where() + ": " + e.getMessage(),
                    e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void headers(MimeMessage mail, Letter letter, Recipient recipient)
            throws MessagingException, UnsupportedEncodingException {
        String to = recipient.address().where();
        mail.setFrom(address(sender.address(), sender.name()));
        mail.setRecipient(MimeMessage.RecipientType.TO, address(to, recipient.name()));
        mail.setSubject(letter.subject(), UTF_8);
        mail.setHeader(
                "Date",
                DATE.format(letter.written().at().atZone(letter.written().zone())));
        mail.setHeader("Message-ID", messageId(letter.event(), to));
        thread(mail, letter, to);
        mail.setHeader("Auto-Submitted", "auto-generated");
        mail.setHeader("List-Id", MimeUtility.fold(9, listId()));
    }

    /** The whole thread, the mail before this one last (RFC 5322 3.6.4), an id to a line. */
    private void thread(MimeMessage mail, Letter letter, String to) throws MessagingException {
        List<String> ids =
                letter.earlier().stream().map(event -> messageId(event, to)).toList();
        if (!ids.isEmpty()) {
            mail.setHeader("In-Reply-To", ids.get(ids.size() - 1));
            mail.setHeader("References", String.join("\r\n ", ids));
        }
    }

    private static InternetAddress address(String where, String name)
            throws MessagingException, UnsupportedEncodingException {
        InternetAddress address = new InternetAddress(where, true);
        address.setPersonal(name, UTF_8);
        return address;
    }

    /** RFC 2919: words for people, then a name that never changes. */
    private String listId() throws UnsupportedEncodingException {
        String words = MimeUtility.encodeWord(list, UTF_8, null);
        return MimeUtility.quote(words, "\"\\<>@,;:.()[]") + " <brief." + sender.domain() + ">";
    }

    private String messageId(String event, String to) {
        return new MessageId(event, to, sender.domain()).text();
    }

    private static void content(MimeMessage mail, Body body) throws MessagingException {
        Multipart readable = readable(body);
        if (body.calendar().isEmpty()) {
            mail.setContent(readable);
            return;
        }
        MimeMultipart mixed = new MimeMultipart("mixed");
        mixed.addBodyPart(around(readable));
        mixed.addBodyPart(calendar(body.calendar().get()));
        mail.setContent(mixed);
    }

    private static Multipart readable(Body body) throws MessagingException {
        MimeMultipart alternative = new MimeMultipart("alternative");
        alternative.addBodyPart(text(body.text(), "plain"));
        Optional<String> page = body.page();
        if (page.isPresent()) {
            alternative.addBodyPart(
                    body.pictures().isEmpty()
                            ? text(page.get(), "html")
                            : around(related(page.get(), body)));
        }
        return alternative;
    }

    private static Multipart related(String page, Body body) throws MessagingException {
        MimeMultipart related = new MimeMultipart("related; type=\"text/html\"");
        related.addBodyPart(text(page, "html"));
        for (Letter.Picture picture : body.pictures()) {
            related.addBodyPart(picture(picture));
        }
        return related;
    }

    private static BodyPart around(Multipart parts) throws MessagingException {
        MimeBodyPart part = new MimeBodyPart();
        part.setContent(parts);
        return part;
    }

    private static BodyPart text(String text, String subtype) throws MessagingException {
        MimeBodyPart part = new MimeBodyPart();
        part.setText(text, UTF_8, subtype);
        part.setHeader("Content-Transfer-Encoding", "quoted-printable");
        return part;
    }

    private static BodyPart picture(Letter.Picture picture) throws MessagingException {
        MimeBodyPart part = new MimeBodyPart();
        part.setDataHandler(
                new DataHandler(new ByteArrayDataSource(Png.bytes(picture.image()), "image/png")));
        part.setContentID("<" + picture.contentId() + ">");
        part.setDisposition(MimeBodyPart.INLINE);
        part.setFileName(picture.contentId() + ".png");
        return part;
    }

    private static BodyPart calendar(String calendar) throws MessagingException {
        MimeBodyPart part = new MimeBodyPart();
        part.setDataHandler(new DataHandler(new ByteArrayDataSource(
                calendar.getBytes(StandardCharsets.UTF_8), "text/calendar; charset=UTF-8")));
        part.setDisposition(MimeBodyPart.ATTACHMENT);
        part.setFileName("work.ics");
        part.setHeader("Content-Transfer-Encoding", "base64");
        return part;
    }

    /** A message that keeps the Message-ID it is given. */
    private static final class FixedIdMessage extends MimeMessage {

        FixedIdMessage() {
            super(Session.getInstance(new Properties()));
        }

        @Override
        protected void updateMessageID() {
            // Set already, from the event: a second copy must carry the same one.
        }
    }
}
