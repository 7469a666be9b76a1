package rainward.mail;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** An SMTP server in the JVM that takes mail, or misbehaves in one chosen way. */
final class ScriptedServer implements AutoCloseable {

    /** Ways to behave. */
    enum Manner {
        GOOD,
        REFUSES_RECIPIENT_FOR_NOW,
        MAILBOX_FULL,
        REFUSES_SENDER,
        REFUSES_CONTENT,
        CLOSES_IN_DATA,
        TAKES_AND_CLOSES_BEFORE_SAYING_SO,
        TAKES_AND_CLOSES_AFTER_SAYING_SO,
        NEVER_ANSWERS,
        BUSY
    }

    private final ServerSocket listening;
    private final Thread serving;
    private volatile Manner manner = Manner.GOOD;
    private final List<String> taken = Collections.synchronizedList(new ArrayList<>());

    ScriptedServer() throws IOException {
        this(0);
    }

    ScriptedServer(int port) throws IOException {
        listening = new ServerSocket(port, 20, InetAddress.getByName("localhost"));
        serving = new Thread(this::serve);
        serving.setDaemon(true);
        serving.start();
    }

    int port() {
        return listening.getLocalPort();
    }

    ScriptedServer behaves(Manner next) {
        manner = next;
        return this;
    }

    /** Mails it has taken, whole, in order. */
    List<String> taken() {
        return List.copyOf(taken);
    }

    private void serve() {
        while (!listening.isClosed()) {
            try (Socket caller = listening.accept()) {
                if (!listening.isClosed()) {
                    converse(caller);
                }
            } catch (IOException e) {
                // The caller hung up, or the test is over.
            }
        }
    }

    private void converse(Socket caller) throws IOException {
        var in = new BufferedReader(
                new InputStreamReader(caller.getInputStream(), StandardCharsets.UTF_8));
        if (manner == Manner.NEVER_ANSWERS) {
            pause();
            return;
        }
        say(caller, manner == Manner.BUSY ? "421 too busy, come back later" : "220 scripted");
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            String verb = line.substring(0, Math.min(4, line.length())).toUpperCase();
            if (verb.equals("DATA")) {
                if (!data(caller, in)) {
                    return;
                }
            } else {
                say(caller, answer(verb));
            }
            if (verb.equals("QUIT")) {
                return;
            }
        }
    }

    private String answer(String verb) {
        return switch (verb) {
            case "MAIL" -> manner == Manner.REFUSES_SENDER ? "550 sender not welcome" : "250 ok";
            case "RCPT" ->
                switch (manner) {
                    case REFUSES_RECIPIENT_FOR_NOW -> "451 4.7.1 greylisted, try again later";
                    case MAILBOX_FULL -> "552 5.2.2 mailbox full";
                    default -> "250 ok";
                };
            case "QUIT" -> "221 bye";
            default -> "250 ok";
        };
    }

    /** False where the server hangs up. */
    private boolean data(Socket caller, BufferedReader in) throws IOException {
        say(caller, "354 go on");
        StringBuilder mail = new StringBuilder();
        for (String line = in.readLine(); line != null && !line.equals("."); line = in.readLine()) {
            mail.append(line.startsWith(".") ? line.substring(1) : line).append("\r\n");
            if (manner == Manner.CLOSES_IN_DATA) {
                return false;
            }
        }
        if (manner == Manner.REFUSES_CONTENT) {
            say(caller, "554 5.6.0 content not welcome");
            return true;
        }
        taken.add(mail.toString());
        if (manner == Manner.TAKES_AND_CLOSES_BEFORE_SAYING_SO) {
            return false;
        }
        say(caller, "250 2.0.0 taken as " + taken.size());
        return manner != Manner.TAKES_AND_CLOSES_AFTER_SAYING_SO;
    }

    private static void say(Socket caller, String words) throws IOException {
        OutputStream out = caller.getOutputStream();
        out.write((words + "\r\n").getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    private static void pause() {
        try {
            Thread.sleep(Duration.ofSeconds(3).toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Waits for the end: a socket that is closed while it listens may still take one caller. */
    @Override
    public void close() throws IOException {
        listening.close();
        try {
            serving.join(Duration.ofSeconds(5).toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
