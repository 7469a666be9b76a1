package rainward.daemon;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import rainward.feed.recorded.Loopback;

/**
 * A forecast service on loopback whose forecast is always of this hour of its clock: dry, then a
 * likely storm. It can be told to fail.
 */
final class LiveForecast implements AutoCloseable {

    private final HttpServer server;
    private final InstantSource clock;
    private final Faults faults;

    /** What is done to an answer instead of giving it, or nothing. */
    interface Faults {

        /** Where all is well. */
        Faults NONE = () -> Fault.NONE;

        Fault next();
    }

    /** Ways to fail that a client tells apart. */
    enum Fault {
        NONE,
        DOWN,
        BUSY,
        CUT_OFF,
        NO_JSON,
        SLOW
    }

    LiveForecast(InstantSource clock, Faults faults) throws IOException {
        this.clock = clock;
        this.faults = faults;
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

    private String grid() {
        Instant hour = clock.instant().truncatedTo(ChronoUnit.HOURS);
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

    private void answer(HttpExchange exchange, String json) throws IOException {
        byte[] body = json.getBytes(StandardCharsets.UTF_8);
        switch (faults.next()) {
            case DOWN -> exchange.sendResponseHeaders(500, -1);
            case BUSY -> {
                exchange.getResponseHeaders().add("Retry-After", "30");
                exchange.sendResponseHeaders(503, -1);
            }
            case CUT_OFF -> send(exchange, body.length + 100, body);
            case NO_JSON -> send(exchange, 6, "<html>".getBytes(StandardCharsets.UTF_8));
            case SLOW -> {
                sleep();
                send(exchange, body.length, body);
            }
            case NONE -> send(exchange, body.length, body);
        }
        exchange.close();
    }

    private static void send(HttpExchange exchange, int length, byte[] body) throws IOException {
        exchange.getResponseHeaders().add("Content-Type", "application/geo+json");
        exchange.sendResponseHeaders(200, length);
        exchange.getResponseBody().write(body);
    }

    private static void sleep() {
        try {
            Thread.sleep(1_500);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
