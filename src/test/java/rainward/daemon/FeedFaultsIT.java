package rainward.daemon;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static org.assertj.core.api.Assertions.assertThat;

import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import com.github.tomakehurst.wiremock.http.Fault;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.SurveyDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.service.Rounds;
import rainward.feed.Sky;
import rainward.feed.terms.Pacing;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.SourceStatus;

/**
 * Every way in which the preferred service has been seen to break, through the real desks: a round
 * with a fair sky, two hours later a round with the fault, nine hours later a fair one again.
 */
class FeedFaultsIT {

    private static final Instant FAIR = Sky.NOW;
    private static final Instant BROKEN = FAIR.plus(Duration.ofHours(2));
    private static final Instant MENDED = BROKEN.plus(Duration.ofHours(7));
    private static final ZoneId ZONE = ZoneId.of("America/Detroit");
    private static final String MET = "/weatherapi/locationforecast/2.0/complete";
    private static final String NWS_DOWN = "met-norway";

    /** Three tries of ours; the first two, on a kept connection, the HTTP library repeats once. */
    private static final int REPEATED = 5;

    @TempDir
    Path home;

    private final Sky sky = Sky.fair();
    private final AtomicReference<Instant> now = new AtomicReference<>(FAIR);

    @BeforeEach
    void fairSky() throws IOException {
        alerts(Sky.json("{\"type\":\"FeatureCollection\",\"features\":[]}"));
        sky.on(MET, Sky.json(Sky.fixture("met-complete.json")));
        Files.writeString(home.resolve("rainward.toml"), settings(sky.server.baseUrl()));
    }

    @AfterEach
    void close() {
        sky.close();
    }

    /**
     * A fault and what is to come of it.
     *
     * @param name what breaks
     * @param answer of the cell
     * @param source that the plan is then made from
     * @param words that the person reads about it
     * @param asked how often the cell is asked in that round
     */
    record Scenario(
            String name, ResponseDefinitionBuilder answer, String source, String words, int asked) {

        @Override
        public String toString() {
            return name;
        }
    }

    private static Scenario down(
            String name, ResponseDefinitionBuilder answer, String words, int asked) {
        return new Scenario(name, answer, NWS_DOWN, words, asked);
    }

    private static Scenario borne(String name, String grid, String words) {
        return new Scenario(name, Sky.json(grid), "nws", words, 1);
    }

    static Stream<Scenario> thatStopTheService() {
        return Stream.of(
                down("500", Sky.problem(500, "UnexpectedProblem"), "is in trouble itself (500", 3),
                down("502 page", Sky.page(502), "is in trouble itself (502, \"a web page\"", 3),
                down("503 problem", Sky.problem(503, "ForecastGridExpired"), "GridExpired", 3),
                down("503 page", Sky.page(503), "is in trouble itself (503, \"a web page\"", 3),
                down("403 page", Sky.page(403), "turns us away (403", 1),
                down("200 page", Sky.page(200), "sent a web page instead of data", 2),
                down("200 empty", Sky.json(""), "sent an empty answer", 2),
                down("cut JSON", Sky.json(half()), "that is not whole", 2),
                down("error text after JSON", Sky.json(Sky.grid() + "ERROR: x"), "not whole", 2),
                down("broken chunk", fault(Fault.MALFORMED_RESPONSE_CHUNK), "broke", 3),
                down("gzip bomb", bomb(), "which no honest answer is", 2),
                down("cut gzip", cutGzip(), "broke the connection off", 3),
                down("slow drip", drip(), "did not finish its answer within 1 s", 3),
                down("connection reset", fault(Fault.CONNECTION_RESET_BY_PEER), "broke", REPEATED),
                down("empty reply", fault(Fault.EMPTY_RESPONSE), "broke", REPEATED),
                down("random bytes", fault(Fault.RANDOM_DATA_THEN_CLOSE), "nws ", REPEATED),
                down(
                        "redirect to another host",
                        redirect("https://other.example/x"),
                        "not the host",
                        2),
                down("redirect in a circle", redirect(Sky.GRID), "in circles", 8),
                down("429", Sky.problem(429, "RateLimit"), "asked too often", 2),
                down("429 for 20 s", limit("20"), "asked too often", 2),
                down("429 for an hour", limit("3600"), "asked too often", 1),
                down("429 for ever", limit("99999999999"), "asked too often", 1),
                down("200, 40 h old", Sky.json(old()), "sent an old forecast", 2),
                down("layers all empty", Sky.json(withoutValues()), "temperature", 2));
    }

    static Stream<Scenario> thatTheServiceIsBorneWith() {
        String grid = Sky.grid();
        return Stream.of(
                borne("redirect on the host", grid, ""),
                borne("undefined/PT1H", undefined(), "'undefined/PT1H' is not a time interval"),
                borne("mixed zones", mixedZones(), ""),
                borne(
                        "unit code unknown",
                        grid.replace("wmoUnit:km_h-1", "wmoUnit:furlong"),
                        "unknown unit 'wmoUnit:furlong'"),
                borne("values as strings", asStrings(), ""),
                borne("NaN and values beyond belief", beyondBelief(), "is not believable"),
                borne("null values", nulls(), "filled from their neighbours"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("thatStopTheService")
    void planComesFromTheNextSourceAndThePersonIsTold(Scenario scenario) throws IOException {
        play(scenario);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("thatTheServiceIsBorneWith")
    void planComesFromWhatCanBeReadAndTheRestIsNamed(Scenario scenario) throws IOException {
        if (scenario.name().startsWith("redirect")) {
            sky.on("/moved", Sky.json(Sky.grid()));
            play(new Scenario(scenario.name(), redirect("/moved"), "nws", scenario.words(), 1));
        } else {
            play(scenario);
        }
    }

    private void play(Scenario scenario) throws IOException {
        try (Office office = office()) {
            Rounds rounds = rounds(office);
            assertThat(round(office, rounds, FAIR)).as("fair").isEqualTo("nws");

            sky.server.resetRequests();
            sky.on(Sky.GRID, scenario.answer());
            assertThat(round(office, rounds, BROKEN)).isEqualTo(scenario.source());
            assertThat(sky.asked(Sky.GRID)).as("questions to the cell").isEqualTo(scenario.asked());
            assertThat(sky.asked(Sky.POINT)).as("questions to the point").isZero();
            assertThat(sky.asked(MET)).isEqualTo(scenario.source().equals("nws") ? 0 : 1);
            assertThat(told(office)).as("told").contains(scenario.words());
            if (!scenario.source().equals("nws")) {
                assertThat(told(office)).contains(" since " + local(BROKEN));
            }

            // A round of commands in the same hour asks nothing again of a service in trouble.
            sky.server.resetRequests();
            round(office, rounds, BROKEN);
            assertThat(sky.asked(Sky.GRID)).as("asked again at once").isZero();

            fairAgain();
            if (scenario.words().equals("asked too often") && scenario.name().endsWith("ever")) {
                return;
            }
            assertThat(round(office, rounds, MENDED)).as("recovered").isEqualTo("nws");
            assertThat(new WeatherDesk(office).sources())
                    .filteredOn(s -> s.source().equals("nws"))
                    .extracting(SourceStatus::state)
                    .containsExactly(SourceStatus.State.OK);
        }
    }

    @Test
    void placeThatTheServiceDoesNotKnowIsAskedOfTheNext() throws IOException {
        sky.on(Sky.POINT, Sky.problem(404, "InvalidPoint"));
        try (Office office = office()) {
            assertThat(round(office, rounds(office), FAIR)).isEqualTo(NWS_DOWN);
            assertThat(sky.asked(Sky.POINT)).isOne();
            assertThat(sky.asked(Sky.GRID)).isZero();
            assertThat(told(office)).contains("has nothing for this place (404");
        }
    }

    @Test
    void cellThatIsGoneIsLookedUpAgainOnce() throws IOException {
        try (Office office = office()) {
            Rounds rounds = rounds(office);
            round(office, rounds, FAIR);
            sky.server.resetRequests();
            sky.on(Sky.GRID, Sky.problem(404, "InvalidGridpoint"));

            assertThat(round(office, rounds, BROKEN)).isEqualTo(NWS_DOWN);
            assertThat(sky.asked(Sky.POINT)).isOne();
            assertThat(sky.asked(Sky.GRID)).isOne();
            assertThat(told(office)).contains("has nothing for this place (404");
        }
    }

    @Test
    void nameThatCannotBeFoundIsToldWithWhatItMeans() throws IOException {
        fairRoundThenAddress("https://weather.invalid");
        assertSourceIsOut("the name weather.invalid has no address");
        assertThat(sky.asked(Sky.GRID)).isZero();
    }

    @Test
    void serverThatCannotProveWhoItIsIsNotTrusted() throws IOException {
        try (Sky other = Sky.overTls("/tls/office-server.p12")) {
            fairRoundThenAddress("https://localhost:" + other.server.httpsPort());
            assertSourceIsOut("cannot prove who it is (certificate)");
            assertThat(other.asked()).isZero();
        }
    }

    @Test
    void authorityOfTheOfficeIsTrustedWhereTheSettingsNameIt() throws IOException {
        Files.copy(Path.of("src/test/resources/tls/office-ca.pem"), home.resolve("office-ca.pem"));
        try (Sky other = Sky.overTls("/tls/office-server.p12")) {
            Files.writeString(
                    home.resolve("rainward.toml"),
                    settings("https://localhost:" + other.server.httpsPort())
                            .replace("[weather.address]", """
                                    [weather.network]
                                    authority_file = "office-ca.pem"

                                    [weather.address]"""));
            try (Office office = office()) {
                assertThat(round(office, rounds(office), FAIR)).isEqualTo("nws");
                assertThat(other.asked(Sky.GRID)).isOne();
            }
        }
        Desk.Said said = new Desk(home, FAIR).type("check", "--json");
        assertThat(said.out()).contains("trusts besides: CN=Burr Oak yard authority");
    }

    @Test
    void clockOfThePcThatIsWrongIsTold() throws IOException {
        String date = DateTimeFormatter.RFC_1123_DATE_TIME.format(
                BROKEN.minus(Duration.ofHours(3)).atZone(ZoneId.of("UTC")));
        play(new Scenario(
                "clock",
                Sky.json(Sky.grid()).withHeader("Date", date),
                "nws",
                "this PC's clock is 180 minutes ahead of the clock of nws",
                1));
    }

    @Test
    void alertsThatCannotBeReadAreNeverTakenForNone() throws IOException {
        alerts(Sky.json("{\"type\":\"FeatureCollection\",\"features\":null}"));
        try (Office office = office()) {
            assertThat(round(office, rounds(office), FAIR)).isEqualTo("nws");
            assertThat(told(office)).contains("nws-alerts gives nothing since " + local(FAIR));
            assertThat(sky.asked("/alerts/active")).isOne();
        }
    }

    @Test
    void withEverySourceDownThePlanComesFromTheForecastInHand() throws IOException {
        try (Office office = office()) {
            Rounds rounds = rounds(office);
            round(office, rounds, FAIR);
            sky.server.resetRequests();
            sky.on(Sky.GRID, Sky.problem(500, "UnexpectedProblem"));
            sky.on(MET, Sky.page(502));

            assertThat(round(office, rounds, BROKEN)).isEqualTo("nws, kept");
            assertThat(sky.asked(Sky.GRID) + sky.asked(MET)).isEqualTo(6);
            assertThat(told(office))
                    .contains("nws gives nothing since " + local(BROKEN))
                    .contains("met-norway gives nothing since " + local(BROKEN));
        }
    }

    @Test
    void threeDaysWithoutAnyServiceNeedFewQuestionsAndEndByThemselves() throws IOException {
        try (Office office = office()) {
            Rounds rounds = rounds(office);
            round(office, rounds, FAIR);
            sky.server.resetRequests();
            sky.on(Sky.GRID, Sky.problem(503, "UnavailableWebService"));
            sky.on(MET, Sky.page(503));
            for (int hour = 1; hour <= 72; hour++) {
                now.set(FAIR.plus(Duration.ofHours(hour)));
                new WeatherDesk(office, new Pacing(1, wait -> {})).pullAll();
            }
            // At most one question an hour and source, and fewer while the host is left alone.
            assertThat(sky.asked(Sky.GRID)).isBetween(10, 72);
            assertThat(sky.asked(MET)).isBetween(10, 72);
            assertThat(told(office)).contains(" since " + local(FAIR.plus(Duration.ofHours(1))));
            assertThat(round(office, rounds, FAIR.plus(Duration.ofHours(72))))
                    .isEqualTo("nws, kept");
        }
    }

    @Test
    void propertyWithItsOwnOrderAsksThatOneFirst() throws IOException {
        Files.writeString(home.resolve("rainward.toml"), settings(sky.server.baseUrl()) + """

                        [[weather.property]]
                        name = "Mill Pond"
                        sources = ["met-norway", "nws"]
                        """);
        try (Office office = office()) {
            Rounds rounds = rounds(office);
            assertThat(round(office, rounds, FAIR)).isEqualTo("met-norway");
            assertThat(sky.asked(Sky.GRID)).isZero();
            sky.on(MET, Sky.page(500));
            assertThat(round(office, rounds, BROKEN)).isEqualTo("nws");
            assertThat(told(office)).contains("met-norway gives nothing since");
        }
    }

    private void fairRoundThenAddress(String nws) throws IOException {
        try (Office office = office()) {
            round(office, rounds(office), FAIR);
        }
        sky.server.resetRequests();
        Files.writeString(home.resolve("rainward.toml"), settings(nws));
    }

    private void assertSourceIsOut(String words) throws IOException {
        try (Office office = office()) {
            assertThat(round(office, rounds(office), BROKEN)).isEqualTo(NWS_DOWN);
            assertThat(told(office))
                    .contains(words)
                    .contains("nws gives nothing since " + local(BROKEN));
        }
    }

    /** A round of the service; where its plan comes from. */
    private String round(Office office, Rounds rounds, Instant at) {
        now.set(at);
        Rounds.Turn turn = rounds.turn();
        assertThat(turn.result().outlook().plan().items())
                .as("a plan comes out")
                .isNotEmpty();
        PullOutcome outcome = turn.pulls().get(0).pull().outcome();
        String source = outcome.series().orElseThrow().stamp().source();
        return source + (outcome instanceof PullOutcome.Failed ? ", kept" : "");
    }

    /** What the morning's brief says about the sources of the weather. */
    private String told(Office office) {
        return String.join("\n", new WeatherDesk(office).words());
    }

    private Rounds rounds(Office office) {
        return new Rounds(
                office,
                new WeatherDesk(office, new Pacing(1, wait -> {}, true)),
                new PostDesk(office, Map.of()));
    }

    private Office office() throws IOException {
        HomeFolder folder = new HomeFolder(home);
        Office office = Office.open(
                folder, Office.settings(folder.settings(), Map.of()).settings(), now::get);
        if (office.properties().isEmpty()) {
            new SurveyDesk(office).take(Path.of("src/test/resources/feed/two-fields.geojson"));
        }
        return office;
    }

    private String settings(String nws) {
        return Desk.crew().replace("observed = [\"acis\"]", """
                observed = []
                traces = 20
                connect_within = "1 s"
                answer_within = "1 s"
                call_within = "1 s\"""")
                + """

                [order]
                thinking = "0.05 s"

                [weather.address]
                nws = "%s"
                met_norway = "%s"
                """.formatted(nws, sky.server.baseUrl());
    }

    private void alerts(ResponseDefinitionBuilder answer) {
        sky.on("/alerts/active", answer);
    }

    private void fairAgain() {
        sky.on(Sky.GRID, Sky.json(Sky.grid().replace("T09:12:00", "T18:12:00")));
    }

    private static String local(Instant at) {
        return DateTimeFormatter.ofPattern("EEE, MMM d h:mm a", Locale.US)
                .format(at.atZone(ZONE))
                .replace("AM", "am")
                .replace("PM", "pm");
    }

    private static String half() {
        return Sky.grid().substring(0, Sky.grid().length() / 2);
    }

    private static String old() {
        return Sky.grid().replace("2026-07-15T09:12:00", "2026-07-13T20:12:00");
    }

    private static String withoutValues() {
        return Sky.grid().replaceAll("(?s)\"values\": \\[.*?\\n   \\]", "\"values\": []");
    }

    /** The chances of rain begin with an interval that is none. */
    private static String undefined() {
        return Sky.grid()
                .replaceFirst(
                        "(?s)(\"probabilityOfPrecipitation\".*?\"validTime\": \")[^\"]*",
                        "$1undefined/PT1H");
    }

    /** The same moments, written in three zones. */
    private static String mixedZones() {
        return Sky.grid()
                .replace("2026-07-15T12:00:00+00:00", "2026-07-15T08:00:00-04:00")
                .replace("2026-07-15T13:00:00+00:00", "2026-07-15T13:00:00Z");
    }

    private static String asStrings() {
        return Sky.grid().replaceAll("\"value\": (-?[\\d.]+)", "\"value\": \"$1\"");
    }

    private static String beyondBelief() {
        return Sky.grid()
                .replaceFirst("\"value\": 22.0\\b", "\"value\": 2200.0")
                .replaceFirst("\"value\": 23.81", "\"value\": NaN");
    }

    private static String nulls() {
        return Sky.grid().replaceFirst("\"value\": 22.0\\b", "\"value\": null");
    }

    private static ResponseDefinitionBuilder limit(String retryAfter) {
        return Sky.problem(429, "RateLimit").withHeader("Retry-After", retryAfter);
    }

    private static ResponseDefinitionBuilder redirect(String to) {
        return aResponse().withStatus(301).withHeader("Location", to);
    }

    private static ResponseDefinitionBuilder fault(Fault fault) {
        return aResponse().withFault(fault);
    }

    private static ResponseDefinitionBuilder drip() {
        return Sky.json(Sky.grid()).withChunkedDribbleDelay(40, 20_000);
    }

    private static ResponseDefinitionBuilder bomb() {
        return zipped(new byte[16 << 20], 1);
    }

    private static ResponseDefinitionBuilder cutGzip() {
        return zipped(Sky.grid().getBytes(java.nio.charset.StandardCharsets.UTF_8), 2);
    }

    private static ResponseDefinitionBuilder zipped(byte[] body, int divisor) {
        var bytes = new ByteArrayOutputStream();
        try (var zip = new GZIPOutputStream(bytes)) {
            zip.write(body);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        byte[] whole = bytes.toByteArray();
        return aResponse()
                .withHeader("Content-Type", Sky.GEO)
                .withHeader("Content-Encoding", "gzip")
                .withBody(java.util.Arrays.copyOf(whole, whole.length / divisor));
    }
}
