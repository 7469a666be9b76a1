package rainward.mail;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocket;

/**
 * A door that speaks STARTTLS (RFC 3207) before a server that does not: everything after the
 * handshake is passed on to it. Keeps what was said in the clear.
 */
final class StartTlsDoor implements AutoCloseable {

    private final ServerSocket listening;
    private final int behind;
    private final SSLContext keys;
    private final List<String> inTheClear = Collections.synchronizedList(new ArrayList<>());

    StartTlsDoor(int behind, SSLContext keys) throws IOException {
        this.listening = new ServerSocket(0, 5, InetAddress.getByName("localhost"));
        this.behind = behind;
        this.keys = keys;
        inBackground(this::serve);
    }

    int port() {
        return listening.getLocalPort();
    }

    List<String> saidInTheClear() {
        return List.copyOf(inTheClear);
    }

    private interface Talk {
        void go() throws IOException;
    }

    private static Thread inBackground(Talk talk) {
        Thread thread = new Thread(() -> {
            try {
                talk.go();
            } catch (IOException e) {
                // One side has hung up: the talk is over.
            }
        });
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private void serve() throws IOException {
        while (!listening.isClosed()) {
            Socket caller = listening.accept();
            inBackground(() -> open(caller));
        }
    }

    private void open(Socket caller) throws IOException {
        say(caller, "220 door");
        String line = hear(caller);
        while (!line.equalsIgnoreCase("STARTTLS")) {
            say(caller, line.startsWith("EHLO") ? "250-door\r\n250 STARTTLS" : "530 TLS first");
            line = hear(caller);
        }
        say(caller, "220 go ahead");
        SSLSocket secret =
                (SSLSocket) keys.getSocketFactory().createSocket(caller, null, port(), true);
        secret.setUseClientMode(false);
        Socket server = new Socket("localhost", behind);
        hear(server.getInputStream());
        inBackground(() -> copy(secret.getInputStream(), server));
        copy(server.getInputStream(), secret);
    }

    private static void copy(InputStream from, Socket to) throws IOException {
        try (to) {
            from.transferTo(to.getOutputStream());
        }
    }

    private static void say(Socket socket, String words) throws IOException {
        OutputStream out = socket.getOutputStream();
        out.write((words + "\r\n").getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    private String hear(Socket socket) throws IOException {
        String line = hear(socket.getInputStream());
        inTheClear.add(line);
        return line;
    }

    private static String hear(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0) {
                throw new IOException("hung up");
            }
            line.append((char) c);
        }
        return line.toString().strip();
    }

    @Override
    public void close() throws IOException {
        listening.close();
    }
}
