package rainward.board.api;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MultiGauge;
import io.micrometer.core.instrument.Tags;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.system.ProcessorMetrics;
import io.micrometer.core.instrument.binder.system.UptimeMetrics;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.time.Duration;
import java.util.function.IntSupplier;
import rainward.board.house.House;
import rainward.board.house.Mark;
import rainward.brief.post.OutboxRow;

/** Figures about the service in the text form that Prometheus reads. */
public final class Metrics {

    private final House house;
    private final PrometheusMeterRegistry registry =
            new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
    private final MultiGauge ages = MultiGauge.builder("rainward.forecast.age.seconds")
            .description("Age of the forecast of a property")
            .register(registry);
    private final MultiGauge marks = MultiGauge.builder("rainward.well")
            .description("1 where nothing is to be mended")
            .register(registry);

    /**
     * Metrics.
     *
     * @param house what is measured
     * @param listening how many pages are open
     */
    public Metrics(House house, IntSupplier listening) {
        this.house = house;
        new JvmMemoryMetrics().bindTo(registry);
        new ProcessorMetrics().bindTo(registry);
        new UptimeMetrics().bindTo(registry);
        gauge("rainward.board.listening", "Open pages", () -> listening.getAsInt());
        gauge(
                "rainward.turn",
                "Counts up with every new order",
                () -> house.standing().turn());
        gauge("rainward.fields.waiting", "Fields that wait for seed", this::waiting);
        gauge("rainward.outbox.waiting", "Messages that wait", this::unsent);
    }

    private void gauge(String name, String says, java.util.function.Supplier<Number> value) {
        Gauge.builder(name, value).description(says).register(registry);
    }

    private long waiting() {
        return house.standing().round().stream()
                .flatMap(r -> r.outlook().fields().stream())
                .filter(f -> f.item().status().waiting())
                .count();
    }

    private long unsent() {
        return house.outbox().stream()
                .filter(row -> row.progress().state() == OutboxRow.State.WAITING)
                .count();
    }

    /** A request that was answered. */
    public void answered(String method, int status, Duration took) {
        registry.timer("rainward.board.requests", "method", method, "status", status / 100 + "xx")
                .record(took);
    }

    /** Everything, as of now. */
    public String text() {
        ages.register(
                house.standing().round().stream()
                        .flatMap(r -> r.outlook().forecasts().entrySet().stream())
                        .map(e -> MultiGauge.Row.of(
                                Tags.of("property", e.getKey()),
                                Duration.between(e.getValue().issuedAt(), house.now())
                                        .toSeconds()))
                        .toList(),
                true);
        marks.register(house.health().stream().map(Metrics::row).toList(), true);
        return registry.scrape();
    }

    private static MultiGauge.Row<Number> row(Mark mark) {
        return MultiGauge.Row.of(Tags.of("what", mark.what()), mark.well() ? 1 : 0);
    }
}
