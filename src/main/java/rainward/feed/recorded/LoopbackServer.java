package rainward.feed.recorded;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import rainward.feed.wire.Wire.Reply;

/** Serves set answers by path on this machine, in place of a public service. */
final class LoopbackServer implements AutoCloseable {

    private static final Set<String> PASSED_ON = Set.of(
            "content-type", "cache-control", "expires", "last-modified", "etag", "retry-after");
    private static final Reply NOTHING = new Reply(
            404,
            Map.of("content-type", "application/problem+json"),
            "{\"title\":\"Not recorded\",\"status\":404}".getBytes(StandardCharsets.UTF_8));

    private final HttpServer server;
    private final Map<String, Reply> replies = new ConcurrentHashMap<>();

    LoopbackServer() throws IOException {
        server = Loopback.server();
        server.createContext("/", this::answer);
        server.start();
    }

    URI address() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort());
    }

    /** Sets the answer to a path, whatever its query. */
    void put(String path, Reply reply) {
        replies.put(path, reply);
    }

    void clear() {
        replies.clear();
    }

    private void answer(HttpExchange exchange) throws IOException {
        try (exchange) {
            Reply reply = replies.getOrDefault(exchange.getRequestURI().getPath(), NOTHING);
            reply.headers().forEach((name, value) -> {
                if (PASSED_ON.contains(name)) {
                    exchange.getResponseHeaders().set(name, value);
                }
            });
            int length = reply.body().length;
            exchange.sendResponseHeaders(reply.status(), length == 0 ? -1 : length);
            try (OutputStream out = exchange.getResponseBody()) {
                out.write(reply.body());
            }
        }
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
