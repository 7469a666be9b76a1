package rainward.feed.recorded;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.feed.Sky;
import rainward.feed.reading.Json;
import rainward.feed.reading.Unreadable;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.ForecastSeries.RainOutlook;

/** Recorded responses through the real clients, and files made to be lost on the way. */
class RecordedFeedsTest {

    private static final Path SHARED = Path.of("..", "shared", "data");

    @TempDir
    Path folder;

    @Test
    void realResponsesComeOutWithoutLoss() throws IOException {
        assumeTrue(Files.isDirectory(SHARED), "the folder of real responses is not here");
        var report = RecordedFeeds.verify(SHARED);
        assertThat(report.findings()).noneMatch(f -> f.what().startsWith("not as expected"));
        assertThat(report.responses()).isGreaterThanOrEqualTo(37);
        assertThat(report.asExpected()).isEqualTo(report.responses());
    }

    @Test
    void brokenPartsAreNamedAndCountAsExpected() throws IOException {
        put(
                "nws/place/grid.json",
                Sky.grid().replace("2026-07-17T01:00:00+00:00/PT1H", "undefined/PT1H"));
        put("nws/place/unit.json", Sky.grid().replace("wmoUnit:km_h-1", "wmoUnit:knot_maybe"));
        put("nws/place/cut.json", Sky.grid().substring(0, 4000));
        put("nws/place/page.html", "<html>gateway</html>");
        put("nws/place/point.json", Sky.fixture("nws-point.json"));
        put("nws/place/MANIFEST.json", "[]");
        put("open-meteo/here.json", Sky.fixture("open-meteo.json"));
        put("open-meteo/two.json", "[" + Sky.fixture("open-meteo.json") + "]");
        put("open-meteo/members.json", Sky.fixture("open-meteo-ensemble.json"));
        put("met-norway/here.json", Sky.fixture("met-complete.json"));
        put("elsewhere/other.json", "{}");
        var report = RecordedFeeds.verify(folder);
        assertThat(report.responses()).isEqualTo(9);
        assertThat(report.asExpected()).isEqualTo(9);
        assertThat(report.findings())
                .anyMatch(f ->
                        f.file().endsWith("grid.json") && f.what().contains("'undefined/PT1H'"))
                .anyMatch(f ->
                        f.file().endsWith("unit.json") && f.what().contains("'wmoUnit:knot_maybe'"))
                .anyMatch(f ->
                        f.file().endsWith("cut.json") && f.what().contains("not whole, broken at"))
                .anyMatch(f -> f.file().endsWith("page.html") && f.what().contains("a web page"));
    }

    @Test
    void timesThatWereReplacedArePutBack() throws IOException {
        String marked = Sky.grid()
                .replace("2026-07-15T06:00:00+00:00/PT6H", "date:now -7203 seconds / PT6H");
        put(
                "nws/place/grid.json",
                marked.replace("2026-07-15T09:12:00+00:00", "date:now +4317 seconds"));
        var report = RecordedFeeds.verify(folder);
        assertThat(report.asExpected()).isEqualTo(1);
        assertThat(report.findings())
                .extracting(RecordedFeeds.Finding::what)
                .noneMatch(w -> w.contains("not a time interval") || w.contains("updateTime"));
        assertThat(TimeTemplate.restored("\"date:now -25403 seconds / PT1H\", \"date:now\""))
                .isEqualTo("\"2026-07-15T12:00:00+00:00/PT1H\", \"2026-07-15T19:03:00+00:00\"");
    }

    @Test
    void whatIsLostOnTheWayIsFound() throws Unreadable {
        PlainGrid plain = PlainGrid.of(Json.read(Sky.grid().getBytes(UTF_8)).path("properties"));
        ForecastSeries whole;
        try (Sky sky = Sky.fair()) {
            whole = Sky.series(sky.pull(plain.start().orElseThrow()));
        }
        assertThat(plain.losses(whole)).isEmpty();
        var rain = whole.rain();
        assertThat(plain.losses(with(
                        whole,
                        new RainOutlook(rain.amounts().subList(0, 5), rain.probabilities()))))
                .anyMatch(l -> l.startsWith("intervals hold 26.74"));
        assertThat(plain.losses(with(
                        whole,
                        new RainOutlook(rain.amounts(), rain.probabilities().subList(3, 20)))))
                .anyMatch(l -> l.startsWith("chance of rain at"));
        whole.hourly().airTempC()[7] += 0.1;
        assertThat(plain.losses(whole)).anyMatch(l -> l.startsWith("temperature at"));
    }

    private static ForecastSeries with(ForecastSeries series, RainOutlook rain) {
        return new ForecastSeries(
                series.stamp(), series.point(), series.hourly(), rain, series.warnings());
    }

    private void put(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }
}
