package rainward.daemon;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import rainward.feed.recorded.Loopback;

/**
 * A forecast service on loopback whose forecast is always of this hour: dry, then a likely storm.
 */
final class LiveForecast implements AutoCloseable {

    private final HttpServer server;

    LiveForecast() throws IOException {
        server = Loopback.server();
        server.createContext(
                "/points/",
                e -> answer(e, "{\"properties\":{\"gridId\":\"RWD\",\"gridX\":4,\"gridY\":7}}"));
        server.createContext("/gridpoints/", e -> answer(e, grid()));
        server.createContext(
                "/alerts/", e -> answer(e, "{\"type\":\"FeatureCollection\",\"features\":[]}"));
        server.start();
    }

    String address() {
        return "http://localhost:" + server.getAddress().getPort();
    }

    private static String grid() {
        Instant hour = Instant.now().truncatedTo(ChronoUnit.HOURS);
        Instant storm = hour.plus(60, ChronoUnit.HOURS);
        return """
                {"properties":{"updateTime":"%1$s","validTimes":"%1$s/P7D",
                 "temperature":%2$s,"dewpoint":%3$s,"skyCover":%4$s,"windSpeed":%5$s,
                 "probabilityOfPrecipitation":{"uom":"wmoUnit:percent","values":[
                  {"validTime":"%1$s/PT60H","value":5},{"validTime":"%6$s/PT12H","value":85},
                  {"validTime":"%7$s/PT96H","value":10}]},
                 "quantitativePrecipitation":{"uom":"wmoUnit:mm","values":[
                  {"validTime":"%1$s/PT60H","value":0},{"validTime":"%6$s/PT12H","value":17}]}}}
                """.formatted(
                        hour,
                        layer("wmoUnit:degC", hour, 24),
                        layer("wmoUnit:degC", hour, 14),
                        layer("wmoUnit:percent", hour, 30),
                        layer("wmoUnit:km_h-1", hour, 9),
                        storm,
                        storm.plus(12, ChronoUnit.HOURS));
    }

    private static String layer(String unit, Instant from, int value) {
        return "{\"uom\":\"%s\",\"values\":[{\"validTime\":\"%s/P7D\",\"value\":%d}]}"
                .formatted(unit, from, value);
    }

    private static void answer(HttpExchange exchange, String json) throws IOException {
        byte[] body = json.getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().add("Content-Type", "application/geo+json");
        exchange.sendResponseHeaders(200, body.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(body);
        }
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
