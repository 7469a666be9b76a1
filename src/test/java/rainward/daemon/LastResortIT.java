package rainward.daemon;

import static com.github.tomakehurst.wiremock.client.WireMock.post;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PastDesk;
import rainward.daemon.office.SurveyDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.farm.Property;
import rainward.feed.Sky;
import rainward.feed.terms.Pacing;
import rainward.weather.past.PastWeather;
import rainward.weather.rain.RainOrigin;

/** Stations through the real desks: asked only when no analysis tells, told when they fail. */
class LastResortIT {

    private static final String STATIONS = Sky.GRID + "/stations";
    private static final String REPORTS = "/stations/KBRK/observations";
    private static final LocalDate YESTERDAY = LocalDate.parse("2026-07-14");

    @TempDir
    Path home;

    private final Sky sky = Sky.fair();
    private final AtomicReference<Instant> now = new AtomicReference<>(Sky.NOW);

    @BeforeEach
    void analysesThatAreOut() throws IOException {
        sky.on(STATIONS, Sky.json("""
                {"features":[{"properties":{"stationIdentifier":"KBRK"}}]}"""));
        sky.on(REPORTS, Sky.json(reports()));
        sky.on("/json/stage4.py", Sky.page(503));
        daily(Sky.page(503));
        Files.writeString(
                home.resolve("rainward.toml"),
                Desk.crew().replace("observed = [\"acis\"]", """
                        observed = ["stage4", "acis"]
                        traces = 20""")
                        + """

                        [weather.address]
                        nws = "%1$s"
                        stage4 = "%1$s"
                        acis = "%1$s"
                        met_norway = "%1$s"
                        """.formatted(sky.server.baseUrl()));
    }

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void rainOfAStationCountsOnlyInTheHoursThatItTells() throws IOException {
        try (Office office = office()) {
            pull(office);
            PastWeather past = past(office);
            PastWeather.RainDay day = past.days().stream()
                    .filter(d -> d.day().equals(YESTERDAY))
                    .findFirst()
                    .orElseThrow();
            var station = day.shares().stream()
                    .filter(s -> s.from().origin() == RainOrigin.STATION)
                    .toList();
            assertThat(station)
                    .singleElement()
                    .satisfies(s -> assertThat(s.rainMm()).isCloseTo(4.2, within(1e-9)));
            assertThat(day.shares()).anyMatch(s -> s.from().origin() == RainOrigin.CLIMATE);
        }
    }

    @Test
    void airOfAStationTakesThePlaceOfWhatHadBeenForecast() throws IOException {
        try (Office office = office()) {
            var desk = pull(office);
            now.set(Sky.NOW.plus(Duration.ofHours(7)));
            sky.on(REPORTS, Sky.json(reports()));
            desk.pullObserved();
            var air = past(office).weather().air();
            int h = (int) Duration.between(air.start(), Instant.parse("2026-07-15T13:00:00Z"))
                    .toHours();
            assertThat(air.airTempC()[h]).isEqualTo(33.3);
            assertThat(air.dewPointC()[h]).isEqualTo(11.1);
            // FAO-56 equation 47: wind at 2 m is 0.748 of that at 10 m; 18 km/h are 5 m/s.
            assertThat(air.windMps()[h]).isCloseTo(5 * 0.748, within(0.001));
        }
    }

    @Test
    void stationsAreAskedOnceInSixHoursAndNotAtAllWhereAnAnalysisTells() throws IOException {
        try (Office office = office()) {
            var desk = pull(office);
            assertThat(sky.asked(REPORTS)).isOne();
            assertThat(sky.asked(STATIONS)).isOne();
            now.set(Sky.NOW.plus(Duration.ofHours(5)));
            desk.pullObserved();
            assertThat(sky.asked(REPORTS)).isOne();

            daily(Sky.json(thirtyDays()));
            now.set(Sky.NOW.plus(Duration.ofHours(13)));
            desk.pullObserved();
            assertThat(sky.asked(REPORTS)).isOne();
        }
    }

    @Test
    void stationsThatFailAreToldAndNoLongerOnceTheyNeedNotBeAsked() throws IOException {
        sky.on(REPORTS, Sky.page(502));
        try (Office office = office()) {
            var desk = pull(office);
            assertThat(told(office))
                    .contains("nws-stations gives nothing since ")
                    .contains("is in trouble itself (502");
            assertThat(sky.asked(REPORTS)).isLessThanOrEqualTo(3);

            daily(Sky.json(thirtyDays()));
            now.set(Sky.NOW.plus(Duration.ofHours(13)));
            desk.pullObserved();
            assertThat(told(office)).doesNotContain("nws-stations");
        }
    }

    @Test
    void stationsWithoutRainAndAirSayNothingOfADryDay() throws IOException {
        sky.on(REPORTS, Sky.json("{\"features\":[]}"));
        try (Office office = office()) {
            pull(office);
            assertThat(past(office).days())
                    .noneMatch(d -> d.shares().stream()
                            .anyMatch(s -> s.from().origin() == RainOrigin.STATION));
        }
    }

    private WeatherDesk pull(Office office) {
        var desk = new WeatherDesk(office, new Pacing(1, wait -> {}));
        desk.pullAll();
        desk.pullObserved();
        return desk;
    }

    private static String told(Office office) {
        return String.join("\n", new WeatherDesk(office).words());
    }

    private PastWeather past(Office office) {
        Property property = office.roster().properties().values().iterator().next();
        return office.store()
                .read(books -> new PastDesk(office)
                        .of(books, property, Objects.requireNonNull(now.get())));
    }

    private Office office() throws IOException {
        HomeFolder folder = new HomeFolder(home);
        Office office = Office.open(
                folder, Office.settings(folder.settings(), Map.of()).settings(), now::get);
        new SurveyDesk(office).take(Path.of("src/test/resources/feed/two-fields.geojson"));
        return office;
    }

    private void daily(ResponseDefinitionBuilder answer) {
        sky.server.stubFor(post(urlPathEqualTo("/GridData")).willReturn(answer));
    }

    private static String thirtyDays() {
        return IntStream.rangeClosed(-30, 1)
                .mapToObj(d -> "[\"" + YESTERDAY.plusDays(d) + "\",0.0]")
                .collect(Collectors.joining(",", "{\"data\":[", "]}"));
    }

    /** Two hours of rain on the day before, one of null, and air on the day itself. */
    private static String reports() {
        return List.of(
                        report("2026-07-14T20:00:00Z", "3.0"),
                        report("2026-07-14T21:00:00Z", "1.2"),
                        report("2026-07-14T22:00:00Z", "null"),
                        report("2026-07-15T13:00:00Z", "null"))
                .stream()
                .collect(Collectors.joining(",", "{\"features\":[", "]}"));
    }

    private static String report(String at, String rainMm) {
        return """
                {"properties":{"timestamp":"%s",
                 "precipitationLastHour":{"unitCode":"wmoUnit:mm","value":%s},
                 "temperature":{"unitCode":"wmoUnit:degC","value":33.3},
                 "dewpoint":{"unitCode":"wmoUnit:degC","value":11.1},
                 "windSpeed":{"unitCode":"wmoUnit:km_h-1","value":18}}}""".formatted(at, rainMm);
    }
}
