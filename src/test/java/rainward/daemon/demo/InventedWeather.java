package rainward.daemon.demo;

import java.net.URI;
import java.time.Instant;
import java.time.InstantSource;

/** The demo's forecasts, served on this machine as of one moment of its story. */
public final class InventedWeather implements AutoCloseable {

    /** Monday at dawn, after the night's forecast. */
    public static final Instant MONDAY = Instant.parse("2026-07-13T09:00:00Z");

    private final DemoServer server = DemoServer.start(InstantSource.fixed(MONDAY));

    public URI address() {
        return server.address();
    }

    @Override
    public void close() {
        server.close();
    }
}
