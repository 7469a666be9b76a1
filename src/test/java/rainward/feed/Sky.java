package rainward.feed;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.anyRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.anyUrl;
import static com.github.tomakehurst.wiremock.client.WireMock.get;
import static com.github.tomakehurst.wiremock.client.WireMock.getRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static com.github.tomakehurst.wiremock.core.WireMockConfiguration.options;

import com.github.tomakehurst.wiremock.WireMockServer;
import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import com.github.tomakehurst.wiremock.core.WireMockConfiguration;
import com.github.tomakehurst.wiremock.stubbing.Scenario;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import okhttp3.OkHttpClient;
import rainward.farm.GeoPoint;
import rainward.feed.nws.NationalWeatherService;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Gateway;
import rainward.feed.terms.MemoryCopies;
import rainward.feed.terms.MemoryPauses;
import rainward.feed.terms.Pacing;
import rainward.feed.terms.Service;
import rainward.feed.wire.PoliteClient;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.Pull;
import rainward.weather.source.PullOutcome;

/** A stand-in for the US service on loopback, and a client that only pretends to wait. */
public final class Sky implements AutoCloseable {

    public static final GeoPoint FARM = new GeoPoint(42.1, -84.2);
    public static final Instant NOW = Instant.parse("2026-07-15T10:20:00Z");
    public static final String GRID = "/gridpoints/MIX/41,27";
    public static final String POINT = "/points/42.1,-84.2";
    public static final String GEO = "application/geo+json";

    public final WireMockServer server;
    public final MemoryCopies copies = new MemoryCopies();
    final MemoryPauses pauses = new MemoryPauses();
    public final List<Duration> waits = new ArrayList<>();
    public FeedSettings settings;
    public OkHttpClient base = new OkHttpClient();
    private Optional<PoliteClient> client = Optional.empty();

    public Sky() {
        this(options());
    }

    private Sky(WireMockConfiguration options) {
        server = new WireMockServer(options.dynamicPort()
                .bindAddress("127.0.0.1")
                .http2PlainDisabled(true)
                .http2TlsDisabled(true)
                .containerThreads(20));
        server.start();
        URI here = URI.create("http://127.0.0.1:" + server.port());
        var pace = new FeedSettings.Pace(
                Duration.ofSeconds(1), Duration.ofSeconds(1), Duration.ofMillis(1500), 2, 3, false);
        FeedSettings all = new FeedSettings(
                new FeedSettings.Identity("Rainward/test", "crew@farm.example"),
                Map.of(),
                pace,
                Optional.empty(),
                Gateway.NONE);
        for (Service service : Service.values()) {
            all = all.at(service, here);
        }
        settings = all;
    }

    /** A sky in which the point and its cell answer as on a good day. */
    public static Sky fair() {
        return brightened(new Sky());
    }

    /** The same over TLS too, with a certificate from a key store on the class path. */
    public static Sky overTls(String keyStore) {
        return brightened(new Sky(options()
                .dynamicHttpsPort()
                .keystorePath(Sky.class.getResource(keyStore).getPath())
                .keystoreType("PKCS12")
                .keystorePassword("password")
                .keyManagerPassword("password")));
    }

    private static Sky brightened(Sky sky) {
        sky.on(POINT, json(fixture("nws-point.json")).withHeader("Cache-Control", "max-age=80000"));
        sky.on(GRID, json(fixture("nws-grid.json")).withHeader("Cache-Control", "max-age=3600"));
        return sky;
    }

    public void on(String path, ResponseDefinitionBuilder answer) {
        server.stubFor(get(urlPathEqualTo(path)).willReturn(answer));
    }

    /** Answers in turn; the last one stays. */
    public void inTurn(String path, ResponseDefinitionBuilder... answers) {
        for (int i = 0; i < answers.length; i++) {
            String state = i == 0 ? Scenario.STARTED : "answer " + i;
            server.stubFor(get(urlPathEqualTo(path))
                    .inScenario(path)
                    .whenScenarioStateIs(state)
                    .willReturn(answers[i])
                    .willSetStateTo("answer " + Math.min(i + 1, answers.length - 1)));
        }
    }

    public PoliteClient client() {
        if (client.isEmpty()) {
            client = Optional.of(new PoliteClient(
                    base,
                    settings,
                    new PoliteClient.Memory(copies, pauses),
                    new Pacing(7, waits::add)));
        }
        return client.get();
    }

    /** As after a restart: only what is kept outside the process is still known. */
    public void restart() {
        client = Optional.empty();
    }

    public Pull pull(Instant asOf) {
        return new NationalWeatherService(client()).pull(FARM, asOf);
    }

    public PullOutcome outcome() {
        return pull(NOW).outcome();
    }

    public static ForecastSeries series(Pull pull) {
        return pull.outcome().series().orElseThrow();
    }

    public int asked(String path) {
        return server.findAll(getRequestedFor(urlPathEqualTo(path))).size();
    }

    public int asked() {
        return server.findAll(anyRequestedFor(anyUrl())).size();
    }

    public static ResponseDefinitionBuilder json(String body) {
        return aResponse().withHeader("Content-Type", GEO).withBody(body);
    }

    public static ResponseDefinitionBuilder problem(int status, String type) {
        return aResponse()
                .withStatus(status)
                .withHeader("Content-Type", "application/problem+json")
                .withBody("{\"type\":\"https://problems.example/" + type + "\",\"title\":\"" + type
                        + "\",\"status\":" + status + "}");
    }

    public static ResponseDefinitionBuilder page(int status) {
        return aResponse()
                .withStatus(status)
                .withHeader("Content-Type", "text/html")
                .withBody("<html><body>Reference #18.4f</body></html>");
    }

    public static String grid() {
        return fixture("nws-grid.json");
    }

    public static String fixture(String name) {
        try (InputStream in = Sky.class.getResourceAsStream("/feed/" + name)) {
            if (in == null) {
                throw new IllegalArgumentException("no fixture " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        server.stop();
    }
}
