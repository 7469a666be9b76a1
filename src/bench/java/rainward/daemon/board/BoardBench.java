package rainward.daemon.board;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The first page over HTTP, for the invented crew's fields and for many more of their kind; and,
 * printed at the end, what fifty open pages cost where nothing changes. A thousand fields take more
 * than a gigabyte while their first order is reckoned.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = "-Xmx8g")
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
public class BoardBench {

    private static final int LISTENERS = 50;
    private static final int IDLE_S = 60;

    /** How many fields there are. */
    @Param({"40", "1000"})
    public int fields;

    private final HttpClient client = HttpClient.newHttpClient();
    private BoardStage stage;

    /** Opens the board of so many fields, with an order reckoned. */
    @Setup
    public void open() throws IOException {
        Path home = Files.createTempDirectory("board-bench");
        Path file = Files.createTempFile("fields", ".geojson");
        Files.writeString(file, copies(fields));
        stage = new BoardStage(home, file);
        int planned =
                stage.standing().round().orElseThrow().outlook().plan().items().size();
        if (planned < 40) {
            throw new IllegalStateException("only " + planned + " pieces of work are planned");
        }
    }

    /** The demo's fields, again and again a little to the north. */
    private static String copies(int count) throws IOException {
        ObjectMapper json = new ObjectMapper();
        JsonNode demo = json.readTree(Path.of("config", "demo-fields.geojson").toFile());
        ObjectNode all = json.createObjectNode().put("type", "FeatureCollection");
        ArrayNode features = all.putArray("features");
        List<JsonNode> parcels = new ArrayList<>();
        demo.path("features").forEach(feature -> {
            if (feature.path("properties").has("gate")) {
                features.add(feature);
            } else {
                parcels.add(feature);
            }
        });
        for (int i = 0; i < count; i++) {
            ObjectNode copy = parcels.get(i % parcels.size()).deepCopy();
            int round = i / parcels.size();
            if (round > 0) {
                ObjectNode properties = (ObjectNode) copy.path("properties");
                properties.put("name", properties.path("name").asText() + " " + round);
                north(copy.path("geometry").path("coordinates").path(0), 0.0001 * round);
            }
            features.add(copy);
        }
        return json.writeValueAsString(all);
    }

    private static void north(JsonNode ring, double degrees) {
        ring.forEach(point ->
                ((ArrayNode) point).set(1, DoubleNode.valueOf(point.path(1).asDouble() + degrees)));
    }

    /** The page that everybody opens first. */
    @Benchmark
    public int firstPage() throws IOException, InterruptedException {
        return client.send(
                        HttpRequest.newBuilder(URI.create(stage.link("/"))).build(),
                        HttpResponse.BodyHandlers.ofByteArray())
                .body()
                .length;
    }

    /** Opens many pages, waits, and tells what they cost. */
    @TearDown
    public void idle() throws IOException, InterruptedException {
        List<InputStream> open = new ArrayList<>();
        for (int i = 0; i < LISTENERS; i++) {
            open.add(client.send(
                            HttpRequest.newBuilder(URI.create(stage.link("/live")))
                                    .header("Accept", "text/event-stream")
                                    .build(),
                            HttpResponse.BodyHandlers.ofInputStream())
                    .body());
        }
        var system = (com.sun.management.OperatingSystemMXBean)
                ManagementFactory.getOperatingSystemMXBean();
        Thread.sleep(3000);
        long before = system.getProcessCpuTime();
        Thread.sleep(IDLE_S * 1000L);
        double share = (system.getProcessCpuTime() - before) / (IDLE_S * 1e9);
        System.out.printf(
                "%n%d open pages, nothing changes: %.2f %% of a core%n", LISTENERS, 100 * share);
        System.out.printf("first page: %d bytes%n", firstPage());
        for (InputStream in : open) {
            in.close();
        }
        stage.close();
    }
}
