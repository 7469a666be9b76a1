package rainward.daemon.board;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import com.code_intelligence.jazzer.api.BugDetectors;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;

/**
 * Requests to the board as bytes on the wire, behind a first line and a token that let them in: it
 * answers each, and never with a fault of its own.
 */
class BoardFuzz {

    private static final String TOKEN = "0123456789abcdef0123456789abcdef";

    /** Where the input's first byte sends the rest; what ends in = takes it as a parameter. */
    private static final List<String> DOORS = List.of(
            "GET /field/",
            "GET /?who=",
            "GET /ground?find=",
            "GET /?said=",
            "GET /calendar.ics?who=",
            "GET /settings/",
            "GET /",
            "GET /api/1/",
            "POST /say",
            "POST /me",
            "POST /api/1/say");

    @TempDir
    static Path home;

    private static BoardStage stage;
    private static int port;

    @BeforeAll
    static void open() {
        stage = new BoardStage(home, Path.of("src/test/resources/feed/two-fields.geojson"));
        port = URI.create(stage.link()).getPort();
        stage.settled();
    }

    @AfterAll
    static void shut() {
        stage.close();
    }

    @FuzzTest(maxDuration = "10m")
    void requests(byte[] bytes) throws IOException {
        BugDetectors.allowNetworkConnections(
                (host, port) -> host.equals("127.0.0.1") || host.equals("localhost"));
        if (bytes.length == 0) {
            return;
        }
        String door = DOORS.get((bytes[0] & 0xff) % DOORS.size());
        String rest = new String(bytes, 1, bytes.length - 1, ISO_8859_1);
        String answer = asked(door.startsWith("GET") ? get(door, rest) : post(door, rest));
        if (answer.matches("(?s)HTTP/1\\.1 5(?!03).*")) {
            throw new IllegalStateException(door + " was answered by " + answer);
        }
    }

    private static String get(String door, String rest) {
        return door + rest.replaceAll("[\\r\\n ]", "+") + " HTTP/1.1\r\n" + head() + "\r\n";
    }

    private static String post(String door, String rest) {
        String type =
                door.contains("/api/") ? "application/json" : "application/x-www-form-urlencoded";
        return door + " HTTP/1.1\r\n" + head() + "Content-Type: " + type + "\r\nContent-Length: "
                + rest.length() + "\r\n\r\n" + rest;
    }

    private static String head() {
        return "Host: localhost:" + port + "\r\nCookie: rainward-form=" + TOKEN
                + "\r\nX-Rainward-Token: " + TOKEN + "\r\nConnection: close\r\n";
    }

    private static String asked(String request) throws IOException {
        try (Socket line = new Socket(InetAddress.getLoopbackAddress(), port)) {
            // No answer within this time is a hang, and fails.
            line.setSoTimeout(20_000);
            line.getOutputStream().write(request.getBytes(ISO_8859_1));
            ByteArrayOutputStream answer = new ByteArrayOutputStream();
            line.getInputStream().transferTo(answer);
            return answer.toString(ISO_8859_1);
        }
    }
}
