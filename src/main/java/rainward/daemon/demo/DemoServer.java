package rainward.daemon.demo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import rainward.daemon.demo.FaultSchedule.Part;
import rainward.feed.recorded.Loopback;

/** Stands in for the public weather services on loopback, as of the demo's clock. */
final class DemoServer implements AutoCloseable {

    private static final ObjectMapper JSON = new ObjectMapper();

    private final InstantSource clock;
    private final HttpServer server;
    private final Trouble trouble;
    private final FaultSchedule.Tally tally = new FaultSchedule.Tally();
    private final List<DemoFiles.Forecast> forecasts = DemoFiles.forecasts();

    private DemoServer(InstantSource clock, HttpServer server, Trouble trouble) {
        this.clock = clock;
        this.server = server;
        this.trouble = trouble;
    }

    static DemoServer start(InstantSource clock) {
        return start(clock, (part, at) -> Optional.empty());
    }

    /** The same, with faults thrown in. */
    static DemoServer start(InstantSource clock, FaultSchedule faults) {
        return start(clock, faults::at);
    }

    private static DemoServer start(InstantSource clock, Trouble trouble) {
        try {
            HttpServer http = Loopback.server();
            DemoServer demo = new DemoServer(clock, http, trouble);
            demo.serve("/points/", Part.NWS, demo::point);
            demo.serve("/gridpoints/", Part.NWS, demo::cell);
            demo.serve("/alerts/", Part.ALERTS, exchange -> Optional.of(demo.alerts()));
            demo.serve("/GridData", Part.ACIS, demo::observed);
            demo.serve("/weatherapi/", Part.MET_NORWAY, demo::series);
            http.start();
            return demo;
        } catch (IOException e) {
            throw new IllegalStateException("the demo needs a port on loopback", e);
        }
    }

    /** What goes wrong at a moment. */
    @FunctionalInterface
    private interface Trouble {
        Optional<FaultSchedule.Fault> at(Part part, Instant moment);
    }

    /** What the server has been asked so far. */
    FaultSchedule.Tally tally() {
        return tally;
    }

    private void serve(String path, Part part, Function<HttpExchange, Optional<String>> answer) {
        server.createContext(path, exchange -> {
            Optional<FaultSchedule.Fault> fault = trouble.at(part, clock.instant());
            tally.count(part, fault);
            if (fault.isPresent()) {
                FaultyAnswer.of(fault.get(), answer.apply(exchange).orElse("")).give(exchange);
            } else {
                answer(exchange, answer.apply(exchange));
            }
        });
    }

    /** The second service, for a place in the query. */
    private Optional<String> series(HttpExchange exchange) {
        Map<String, String> query = new HashMap<>();
        for (String pair : exchange.getRequestURI().getQuery().split("&", -1)) {
            String[] halves = pair.split("=", 2);
            query.put(halves[0], halves[halves.length - 1]);
        }
        double latitudeDeg = Double.parseDouble(query.getOrDefault("lat", "0"));
        double longitudeDeg = Double.parseDouble(query.getOrDefault("lon", "0"));
        return forecasts.stream()
                .filter(f -> near(f.position(), latitudeDeg, longitudeDeg))
                .findFirst()
                .flatMap(f -> DemoFiles.newest(forecasts, f.grid(), clock.instant()))
                .map(f -> SecondService.of(read(DemoFiles.text(f.file()))));
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
