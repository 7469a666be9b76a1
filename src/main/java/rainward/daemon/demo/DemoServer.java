package rainward.daemon.demo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;

/** Stands in for the public weather services on loopback, as of the demo's clock. */
final class DemoServer implements AutoCloseable {

    private static final ObjectMapper JSON = new ObjectMapper();

    private final InstantSource clock;
    private final HttpServer server;
    private final List<DemoFiles.Forecast> forecasts = DemoFiles.forecasts();

    private DemoServer(InstantSource clock, HttpServer server) {
        this.clock = clock;
        this.server = server;
    }

    static DemoServer start(InstantSource clock) {
        try {
            HttpServer http = HttpServer.create(
                    new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
            DemoServer demo = new DemoServer(clock, http);
            http.createContext("/points/", exchange -> demo.answer(exchange, demo.point(exchange)));
            http.createContext(
                    "/gridpoints/", exchange -> demo.answer(exchange, demo.cell(exchange)));
            http.createContext(
                    "/alerts/", exchange -> demo.answer(exchange, Optional.of(demo.alerts())));
            http.createContext(
                    "/GridData", exchange -> demo.answer(exchange, demo.observed(exchange)));
            http.start();
            return demo;
        } catch (IOException e) {
            throw new IllegalStateException("the demo needs a port on loopback", e);
        }
    }

    URI address() {
        return URI.create("http://localhost:" + server.getAddress().getPort());
    }

    private static String last(HttpExchange exchange, int parts) {
        String[] path = exchange.getRequestURI().getPath().split("/", -1);
        return String.join("/", List.of(path).subList(path.length - parts, path.length));
    }

    private Optional<String> point(HttpExchange exchange) {
        String position = last(exchange, 1);
        return forecasts.stream()
                .filter(f -> f.position().equals(position))
                .findFirst()
                .map(f -> DemoFiles.text(f.pointFile()));
    }

    private Optional<String> cell(HttpExchange exchange) {
        return DemoFiles.newest(forecasts, last(exchange, 1), clock.instant())
                .map(f -> DemoFiles.text(f.file()));
    }

    /** Alerts that have been sent by now. */
    private String alerts() {
        JsonNode all = read(DemoFiles.text("nws-alerts.json"));
        ArrayNode sent = JSON.createArrayNode();
        for (JsonNode feature : all.path("features")) {
            OffsetDateTime at =
                    OffsetDateTime.parse(feature.path("properties").path("sent").asText());
            if (!at.toInstant().isAfter(clock.instant())) {
                sent.add(feature);
            }
        }
        ObjectNode answer = JSON.createObjectNode().put("type", "FeatureCollection");
        answer.set("features", sent);
        return answer.toString();
    }

    /** Days of the past that were asked for, none of them still to come. */
    private Optional<String> observed(HttpExchange exchange) {
        JsonNode question = read(body(exchange));
        String[] lonLat = question.path("loc").asText().split(",", -1);
        double latitudeDeg = Double.parseDouble(lonLat[lonLat.length - 1]);
        double longitudeDeg = Double.parseDouble(lonLat[0]);
        return forecasts.stream()
                .filter(f -> near(f.position(), latitudeDeg, longitudeDeg))
                .findFirst()
                .map(f -> days(f.place(), question));
    }

    /** Services are told places to 0.01 degree where that is all they need. */
    private static boolean near(String position, double latitudeDeg, double longitudeDeg) {
        String[] latLon = position.split(",", -1);
        return Math.abs(Double.parseDouble(latLon[0]) - latitudeDeg) < 0.011
                && Math.abs(Double.parseDouble(latLon[1]) - longitudeDeg) < 0.011;
    }

    private String days(String place, JsonNode question) {
        JsonNode all = read(DemoFiles.text("acis-" + place + ".json"));
        String from = question.path("sdate").asText();
        String to = question.path("edate").asText();
        String today = DateTimeFormatter.ISO_LOCAL_DATE.format(
                clock.instant().atOffset(ZoneOffset.ofHours(-4)));
        ArrayNode days = JSON.createArrayNode();
        for (JsonNode day : all.path("data")) {
            String date = day.path(0).asText();
            if (date.compareTo(from) >= 0 && date.compareTo(to) <= 0 && date.compareTo(today) < 0) {
                days.add(asked(day, question));
            }
        }
        ObjectNode answer = JSON.createObjectNode();
        answer.set("meta", all.path("meta"));
        answer.set("data", days);
        return answer.toString();
    }

    /**
     * The files hold date, rain, highest and lowest; the answer holds what was asked, in its order.
     */
    private static ArrayNode asked(JsonNode day, JsonNode question) {
        ArrayNode row = JSON.createArrayNode().add(day.path(0));
        for (JsonNode element : question.path("elems")) {
            switch (element.path("name").asText()) {
                case "pcpn" -> row.add(day.path(1));
                case "maxt" -> row.add(day.path(2));
                case "mint" -> row.add(day.path(3));
                default -> row.add(-999);
            }
        }
        return row;
    }

    private static JsonNode read(String text) {
        try {
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new IllegalStateException("the demo was asked what it cannot read", e);
        }
    }

    private static String body(HttpExchange exchange) {
        try {
            return new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("the demo was asked in half a sentence", e);
        }
    }

    private void answer(HttpExchange exchange, Optional<String> found) throws IOException {
        byte[] body = found.orElse("{\"title\":\"Not Found\",\"status\":404}")
                .getBytes(StandardCharsets.UTF_8);
        Instant now = clock.instant();
        exchange.getResponseHeaders().add("Content-Type", "application/geo+json");
        exchange.getResponseHeaders().add("Cache-Control", "max-age=900");
        exchange.getResponseHeaders()
                .add(
                        "Last-Modified",
                        DateTimeFormatter.RFC_1123_DATE_TIME.format(now.atOffset(ZoneOffset.UTC)));
        exchange.sendResponseHeaders(found.isPresent() ? 200 : 404, body.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(body);
        }
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
