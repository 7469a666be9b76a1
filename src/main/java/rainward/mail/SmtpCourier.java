package rainward.mail;

import jakarta.mail.Address;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Stream;
import javax.net.ssl.SSLSocketFactory;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.smtp.SMTPSenderFailedException;
import org.eclipse.angus.mail.smtp.SMTPTransport;
import org.eclipse.angus.mail.util.MailConnectException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.brief.post.Outgoing;

/** Hands mails to an SMTP server (RFC 5321), one conversation a mail. */
public final class SmtpCourier implements Courier {

    private static final Logger LOG = LoggerFactory.getLogger(SmtpCourier.class);

    private final SmtpSettings settings;
    private final Session session;

    /** Trusts the servers that the Java installation trusts. */
    public SmtpCourier(SmtpSettings settings) {
        this(settings, Optional.empty());
    }

    /** Trusts the servers that the factory's context trusts. */
    public SmtpCourier(SmtpSettings settings, SSLSocketFactory trust) {
        this(settings, Optional.of(trust));
    }

    private SmtpCourier(SmtpSettings settings, Optional<SSLSocketFactory> trust) {
        this.settings = settings;
        Properties properties = properties(settings);
        trust.ifPresent(factory -> properties.put("mail.smtp.ssl.socketFactory", factory));
        this.session = Session.getInstance(properties);
    }

    private static Properties properties(SmtpSettings settings) {
        String millis = String.valueOf(settings.timeout().toMillis());
        Properties properties = new Properties();
        properties.put("mail.smtp.connectiontimeout", millis);
        properties.put("mail.smtp.timeout", millis);
        properties.put("mail.smtp.writetimeout", millis);
        properties.put("mail.smtp.from", settings.sender().address());
        properties.put("mail.smtp.localhost", settings.sender().domain());
        properties.put("mail.smtp.auth", String.valueOf(settings.login().isPresent()));
        properties.put("mail.smtp.ssl.checkserveridentity", "true");
        // Where the chosen trust fails, no other is tried.
        properties.put("mail.smtp.socketFactory.fallback", "false");
        // The server's yes is what counts; its goodbye is not waited for.
        properties.put("mail.smtp.quitwait", "false");
        switch (settings.security()) {
            case PLAIN -> properties.put("mail.smtp.starttls.enable", "false");
            case STARTTLS -> {
                properties.put("mail.smtp.starttls.enable", "true");
                properties.put("mail.smtp.starttls.required", "true");
            }
            case TLS -> properties.put("mail.smtp.ssl.enable", "true");
        }
        return properties;
    }

    @Override
    public Delivery deliver(Outgoing message) {
        return talk(transport -> handOver(transport, message));
    }

    /** Everything but the mail: reaches the server, secures the line and logs in. */
    public Delivery probe() {
        return talk(transport -> {
            connect(transport);
            return new Delivery.Accepted(transport.getLastServerResponse().strip());
        });
    }

    /** What is said between the greeting and the goodbye. */
    private interface Talk {
        Delivery with(SMTPTransport transport) throws MessagingException;
    }

    private Delivery talk(Talk talk) {
        try {
            SMTPTransport transport = (SMTPTransport) session.getTransport("smtp");
            try {
                return talk.with(transport);
            } finally {
                hangUp(transport);
            }
        } catch (AuthenticationFailedException e) {
            return Delivery.Passing.because("the server refuses the login: " + oneLine(e));
        } catch (MailConnectException e) {
            return Delivery.Passing.because(
                    "cannot reach " + e.getHost() + ":" + e.getPort() + ": " + oneLine(e));
        } catch (MessagingException e) {
            return refusal(e);
        }
    }

    private Delivery handOver(SMTPTransport transport, Outgoing message) throws MessagingException {
        connect(transport);
        var mail = new MimeMessage(session, new ByteArrayInputStream(message.content()));
        Address[] to = {new InternetAddress(message.key().recipient(), true)};
        transport.sendMessage(mail, to);
        return new Delivery.Accepted(transport.getLastServerResponse().strip());
    }

    /** A goodbye that fails must not turn the server's yes into a second copy. */
    private static void hangUp(SMTPTransport transport) {
        try {
            transport.close();
        } catch (MessagingException e) {
            LOG.debug("closing the conversation: {}", e.getMessage());
        }
    }

    private void connect(SMTPTransport transport) throws MessagingException {
        var server = settings.server();
        transport.connect(
                server.host(),
                server.port(),
                settings.login().map(SmtpSettings.Login::user).orElse(null),
                settings.login().map(SmtpSettings.Login::password).orElse(null));
    }

    /** A 5xx answer to sender, recipient or data is for good; all else passes. */
    private static Delivery refusal(MessagingException e) {
        Optional<Integer> code =
                answers(e).map(SmtpCourier::code).filter(c -> c >= 400).findFirst();
        String said = oneLine(e);
        return code.filter(c -> c >= 500)
                .<Delivery>map(c -> new Delivery.PermanentRefusal(c, said))
                .orElseGet(() -> Delivery.Passing.because(said));
    }

    /** The exception and those chained to it, the particular ones before the general. */
    private static Stream<Exception> answers(Exception e) {
        Stream<Exception> next = e instanceof MessagingException m
                ? Stream.ofNullable(m.getNextException()).flatMap(SmtpCourier::answers)
                : Stream.empty();
        return Stream.concat(next, Stream.of(e));
    }

    private static int code(Exception e) {
        if (e instanceof SMTPAddressFailedException address) {
            return address.getReturnCode();
        }
        if (e instanceof SMTPSenderFailedException sender) {
            return sender.getReturnCode();
        }
        return e instanceof SMTPSendFailedException send ? send.getReturnCode() : -1;
    }

    private static String oneLine(Exception e) {
        return answers(e)
                .findFirst()
                .map(first -> String.valueOf(first.getMessage()))
                .orElse(e.toString())
                .strip()
                .replaceAll("\\s+", " ");
    }
}
