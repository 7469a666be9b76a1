package rainward.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import jakarta.mail.MessagingException;
import jakarta.mail.Multipart;
import jakarta.mail.Part;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.brief.BriefDays;
import rainward.brief.SampleCrew;
import rainward.brief.post.Letter;
import rainward.brief.post.LetterMaker;

/** A server of another make, in a process of its own: Debian's package python3-aiosmtpd. */
class ForeignServerIT {

    private static final Path PROGRAM = Path.of("/usr/bin/aiosmtpd");

    @Test
    void readsTheMailAndKeepsEveryPart(@TempDir Path folder) throws Exception {
        Assumptions.assumeTrue(
                Files.isExecutable(PROGRAM), "python3-aiosmtpd is not installed here");
        int port = freePort();
        Path mailbox = folder.resolve("mailbox");
        Process server = new ProcessBuilder(
                        PROGRAM.toString(),
                        "-n",
                        "-l",
                        "localhost:" + port,
                        "-c",
                        "aiosmtpd.handlers.Mailbox",
                        mailbox.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("server.log").toFile())
                .start();
        try {
            await().atMost(Duration.ofSeconds(30)).until(() -> answers(port));
            Letter letter = new LetterMaker(BundledLettering.read())
                    .brief(BriefDays.dryStormInThreeDays().brief(), Mails.BOYD)
                    .orElseThrow();
            byte[] mail = new MimeLetter(Mails.SENDER, SampleCrew.FARM).bytes(letter, Mails.BOYD);

            Delivery delivery = new SmtpCourier(Mails.settings(port, SmtpSettings.Security.PLAIN))
                    .deliver(Mails.outgoing("brief/2026-07-16", "boyd@crew.example", mail));

            assertThat(delivery).isInstanceOf(Delivery.Accepted.class);
            assertThat(kept(mailbox)).hasSize(1);
            // The server takes the mail apart with its own parser and writes it down anew.
            MimeMessage kept = parsed(kept(mailbox).get(0));
            assertThat(kept.getMessageID()).isEqualTo(parsed(mail).getMessageID());
            assertThat(leaves(kept)).isEqualTo(leaves(parsed(mail))).hasSize(7);
        } finally {
            server.destroy();
        }
    }

    private static MimeMessage parsed(byte[] mail) throws MessagingException {
        return new MimeMessage(
                Session.getInstance(new Properties()), new ByteArrayInputStream(mail));
    }

    /** Type and decoded content of every part that holds no others, in order. */
    private static List<String> leaves(Part part) throws MessagingException, IOException {
        if (!(part.getContent() instanceof Multipart parts)) {
            byte[] content = part.getInputStream().readAllBytes();
            String text = new String(content, StandardCharsets.ISO_8859_1).replace("\r\n", "\n");
            return List.of(part.getContentType().split(";")[0] + " " + text);
        }
        List<String> leaves = new ArrayList<>();
        for (int i = 0; i < parts.getCount(); i++) {
            leaves.addAll(leaves(parts.getBodyPart(i)));
        }
        return leaves;
    }

    private static List<byte[]> kept(Path mailbox) throws IOException {
        try (Stream<Path> files = Files.list(mailbox.resolve("new"))) {
            return files.map(ForeignServerIT::read).toList();
        }
    }

    private static byte[] read(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private static boolean answers(int port) {
        try (Socket socket = new Socket("localhost", port)) {
            return socket.getInputStream().read() == '2';
        } catch (IOException e) {
            return false;
        }
    }
}
