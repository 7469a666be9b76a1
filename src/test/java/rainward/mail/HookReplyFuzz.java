package rainward.mail;

import com.code_intelligence.jazzer.api.BugDetectors;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import rainward.brief.post.Outgoing;
import rainward.brief.post.Recipient;

/** Replies to a web call, as bytes on the wire: whatever comes, it is a verdict in few words. */
class HookReplyFuzz {

    private static ServerSocket door;
    private static Outgoing message;
    private static volatile byte[] reply = {};

    @BeforeAll
    static void open() throws IOException {
        door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        message = new Packing(new MimeLetter(Mails.SENDER, "crew"), Duration.ofHours(24))
                .pack(
                        Mails.letter("brief/2026-07-16", "Thu: Mill 3", "till \"Mill 3\"\n"),
                        new Recipient(
                                "Crew board",
                                Recipient.Address.webhook(
                                        "http://127.0.0.1:" + door.getLocalPort() + "/crew"),
                                Recipient.Wants.EVERYTHING,
                                rainward.farm.UnitSystem.METRIC),
                        Mails.DAWN);
        Thread server = new Thread(HookReplyFuzz::serve, "replies");
        server.setDaemon(true);
        server.start();
    }

    @AfterAll
    static void shut() throws IOException {
        door.close();
    }

    @FuzzTest(maxDuration = "10m")
    void replies(byte[] bytes) {
        BugDetectors.allowNetworkConnections(
                (host, port) -> host.equals("127.0.0.1") || host.equals("localhost"));
        reply = bytes;
        Delivery delivery = new WebhookCourier(Duration.ofSeconds(2), Map.of()).deliver(message);
        if (delivery.said().length() > Delivery.MOST_SAID) {
            throw new IllegalStateException("kept " + delivery.said().length() + " characters");
        }
    }

    private static void serve() {
        while (!door.isClosed()) {
            try (Socket caller = door.accept()) {
                caller.setSoTimeout(1000);
                heard(caller.getInputStream());
                caller.getOutputStream().write(reply);
            } catch (IOException gone) {
                // The caller has hung up, or the door is shut.
            }
        }
    }

    /** Reads the call to its end, so that closing does not cut the reply off. */
    private static void heard(InputStream in) throws IOException {
        StringBuilder head = new StringBuilder();
        while (head.indexOf("\r\n\r\n") < 0) {
            int next = in.read();
            if (next < 0) {
                return;
            }
            head.append((char) next);
        }
        String length = head.toString().replaceAll("(?is).*content-length: (\\d+).*", "$1");
        in.readNBytes(Integer.parseInt(length));
    }
}
