package rainward.store.round;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import rainward.farm.GeoPoint;
import rainward.farm.Window;
import rainward.store.EachEngine;
import rainward.store.Store;
import rainward.store.TestEngine;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;

@EachEngine
class LastKnownTest {

    static final Instant NOW = Instant.parse("2026-07-13T09:00:00Z");
    static final Window NIGHT = new Window(NOW, NOW.plus(Duration.ofHours(6)));

    @Parameter
    TestEngine engine = TestEngine.SQLITE;

    @TempDir
    Path folder;

    @Test
    void aForecastComesBackAsItWasPutOverARestart() {
        ForecastSeries forecast = forecast(4.5);
        try (Store store = engine.open(folder)) {
            put(store, forecast);
        }
        try (Store store = engine.open(folder)) {
            ForecastSeries back = find(store).orElseThrow();
            assertThat(back).usingRecursiveComparison().isEqualTo(forecast);
        }
    }

    @Test
    void theNewerReplacesTheOlder() {
        try (Store store = engine.open(folder)) {
            put(store, forecast(4.5));
            put(store, forecast(9));
            assertThat(find(store).orElseThrow().rain().amounts().get(0).amountMm())
                    .isEqualTo(9);
        }
    }

    @Test
    void nothingIsKnownOfWhatWasNeverPut() {
        try (Store store = engine.open(folder)) {
            assertThat(find(store).isEmpty()).isTrue();
        }
    }

    private static void put(Store store, ForecastSeries forecast) {
        store.inTransaction(books -> {
            books.lastKnown().put("forecast/Mill Pond", NOW, forecast);
            return forecast;
        });
    }

    private static Optional<ForecastSeries> find(Store store) {
        return store.read(
                books -> books.lastKnown().find("forecast/Mill Pond", ForecastSeries.class));
    }

    private static ForecastSeries forecast(double mm) {
        double[] two = {20, 21};
        double[] sky = {0.2, 0.4};
        return new ForecastSeries(
                new ForecastSeries.Stamp("nws", NOW.minusSeconds(600), NOW),
                new GeoPoint(42.07, -84.65),
                new HourlyAir(NOW, two, two, two, sky),
                new ForecastSeries.RainOutlook(
                        List.of(new RainAmount(NIGHT, mm)), List.of(new RainChance(NIGHT, 0.4))),
                List.of("sky cover was missing"));
    }
}
