package rainward.feed.past;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.containing;
import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.getRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.post;
import static com.github.tomakehurst.wiremock.client.WireMock.postRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.feed.Sky.NOW;

import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import com.github.tomakehurst.wiremock.http.Fault;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.farm.Window;
import rainward.feed.Sky;
import rainward.feed.past.ObservedRain.Days;
import rainward.feed.past.ObservedRain.Fallen;

/** Rain that fell: units, ends of hours and days, gaps, and errors dressed as answers. */
class ObservedRainTest {

    private static final LocalDate DAY = LocalDate.of(2026, 7, 14);

    private final Sky sky = new Sky();
    private final ObservedRain rain = new ObservedRain(sky.client());

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void hoursOfTheAnalysisEndAtTheirTimeAndComeInInches() {
        sky.on(
                "/json/stage4.py",
                Sky.json("{\"gridi\":7,\"gridj\":9,\"data\":["
                        + "{\"end_valid\":\"2026-07-14T01:00:00Z\",\"precip_in\":0.1},"
                        + "{\"end_valid\":\"2026-07-14T02:00:00Z\",\"precip_in\":null},"
                        + "{\"end_valid\":\"2026-07-14T03:00:00Z\",\"precip_in\":0}]}"));
        Fallen fallen = rain.hourly(Sky.FARM, DAY, NOW);
        assertThat(fallen.rain()).hasSize(2);
        assertThat(fallen.rain().get(0).amountMm()).isCloseTo(2.54, within(1e-12));
        assertThat(fallen.rain().get(0).window())
                .isEqualTo(window("2026-07-14T00:00:00Z", "2026-07-14T01:00:00Z"));
        assertThat(fallen.rain().get(0).source()).isEqualTo("stage4");
        assertThat(fallen.rain().get(0).fetchedAt()).isEqualTo(NOW);
        assertThat(fallen.notes())
                .containsExactly("stage4: 1 entry left out, the first because it has no value");
        sky.server.verify(
                1,
                getRequestedFor(urlPathEqualTo("/json/stage4.py"))
                        .withQueryParam("valid", equalTo("2026-07-14"))
                        .withQueryParam("tz", equalTo("UTC")));
    }

    @Test
    void outsideTheGridAndWithoutFilesThereIsNothingAndItIsSaid() {
        sky.on("/json/stage4.py", Sky.json("{\"gridi\":-1,\"data\":[]}"));
        assertThat(rain.hourly(Sky.FARM, DAY, NOW).notes())
                .containsExactly("stage4 has no grid at this place");
        sky.on("/json/stage4.py", Sky.json("{\"gridi\":7,\"data\":[]}"));
        Fallen none = rain.hourly(Sky.FARM, DAY.minusDays(1), NOW.plusSeconds(1));
        assertThat(none.rain()).isEmpty();
    }

    @Test
    void aDateOfTheDailyAnalysisEndsAtNoonUtc() {
        posted("{\"data\":[[\"2026-07-13\",3.5],[\"2026-07-14\",-999],[\"2026-07-15\",\"M\"]]}");
        Fallen fallen = rain.daily(Sky.FARM, new Days(DAY.minusDays(1), DAY.plusDays(1)), NOW);
        assertThat(fallen.rain()).hasSize(1);
        assertThat(fallen.rain().get(0).window())
                .isEqualTo(window("2026-07-12T12:00:00Z", "2026-07-13T12:00:00Z"));
        assertThat(fallen.notes().get(0))
                .startsWith("acis: 2 entries left out, the first because"
                        + " nothing is known of 2026-07-14");
        sky.server.verify(
                1,
                postRequestedFor(urlPathEqualTo("/GridData"))
                        .withRequestBody(containing("\"loc\":\"-84.2,42.1\""))
                        .withRequestBody(containing("\"units\":\"mm\"")));
    }

    @Test
    void anErrorWith200IsAnError() {
        posted("{\"error\":\"no data available\"}");
        Fallen fallen = rain.daily(Sky.FARM, new Days(DAY, DAY), NOW);
        assertThat(fallen.rain()).isEmpty();
        assertThat(fallen.notes()).containsExactly("acis sent an error: \"no data available\"");
    }

    @Test
    void textInsteadOfDataIsAnErrorToo() {
        sky.on("/json/stage4.py", aResponse().withBody("ERROR: server over capacity"));
        assertThat(rain.hourly(Sky.FARM, DAY, NOW).notes().get(0)).startsWith("stage4 sent a JSON");
    }

    @Test
    void aStationsRainIsReadWithItsUnitAndNullIsNotDry() {
        sky.on("/stations/KXYZ/observations", Sky.json(reports()));
        Fallen fallen = rain.station("KXYZ", NOW);
        assertThat(fallen.rain()).hasSize(2);
        assertThat(fallen.rain()).anyMatch(r -> Math.abs(r.amountMm() - 2) < 1e-9);
        assertThat(fallen.rain()).anyMatch(r -> Math.abs(r.amountMm() - 0.3) < 1e-9);
        assertThat(fallen.notes())
                .anyMatch(n -> n.contains("it is not given at 2026-07-15T07:53:00Z"));
    }

    @Test
    void theNearestStationThatKnowsRainIsTakenAndNoFurtherOneAsked() {
        sky.on(Sky.POINT, Sky.json(Sky.fixture("nws-point.json")));
        sky.on(
                Sky.GRID + "/stations",
                Sky.json("{\"features\":[{\"properties\":{\"stationIdentifier\":\"KDRY\"}},"
                        + "{\"properties\":{\"stationIdentifier\":\"KXYZ\"}},"
                        + "{\"properties\":{\"stationIdentifier\":\"KFAR\"}}]}"));
        sky.on("/stations/KDRY/observations", Sky.json("{\"features\":[]}"));
        sky.on("/stations/KXYZ/observations", Sky.json(reports()));
        Fallen fallen = rain.nearestStations(Sky.FARM, NOW);
        assertThat(fallen.rain()).hasSize(2);
        assertThat(fallen.answers()).hasSize(4);
        assertThat(sky.asked("/stations/KFAR/observations")).isZero();
    }

    /** Trouble of the nearest station; the user hears of it, the next one answers for it. */
    static Stream<Arguments> trouble() {
        return Stream.of(
                Arguments.of("404", Sky.problem(404, "NotFound"), "404", 1),
                Arguments.of("500", Sky.problem(500, "UnexpectedProblem"), "500", 3),
                Arguments.of("502", Sky.page(502), "502", 3),
                Arguments.of("503", Sky.problem(503, "UnavailableWebService"), "503", 3),
                Arguments.of("page", Sky.page(200), "a web page instead of data", 3),
                Arguments.of("empty", Sky.json(""), "an empty answer", 3),
                Arguments.of("cut", Sky.json(reports().substring(0, 150)), "not whole", 3),
                Arguments.of("null", Sky.json("{\"features\":null}"), "without any features", 3),
                Arguments.of(
                        "hung up",
                        aResponse().withFault(Fault.CONNECTION_RESET_BY_PEER),
                        "broke the connection off",
                        9),
                Arguments.of(
                        "no rain in any report",
                        Sky.json("{\"features\":[" + report("2026-07-15T09:53:00Z", "null") + "]}"),
                        "it is not given at",
                        1),
                Arguments.of(
                        "failed its own check",
                        Sky.json("{\"features\":["
                                + report(
                                        "2026-07-15T09:53:00Z",
                                        "{\"unitCode\":\"wmoUnit:mm\",\"value\":9,"
                                                + "\"qualityControl\":\"X\"}")
                                + "]}"),
                        "failed the service's own check (X)",
                        1),
                Arguments.of(
                        "unknown unit",
                        Sky.json("{\"features\":["
                                + report(
                                        "2026-07-15T09:53:00Z",
                                        "{\"unitCode\":\"wmoUnit:cubit\",\"value\":9}")
                                + "]}"),
                        "its unit 'wmoUnit:cubit' is unknown",
                        1));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("trouble")
    void aStationInTroubleIsNamedAndTheNextOneAnswers(
            String what, ResponseDefinitionBuilder answer, String words, int most) {
        sky.on(Sky.POINT, Sky.json(Sky.fixture("nws-point.json")));
        sky.on(
                Sky.GRID + "/stations",
                Sky.json("{\"features\":[{\"properties\":{\"stationIdentifier\":\"KBAD\"}},"
                        + "{\"properties\":{\"stationIdentifier\":\"KXYZ\"}}]}"));
        sky.on("/stations/KBAD/observations", answer);
        sky.on("/stations/KXYZ/observations", Sky.json(reports()));

        Fallen fallen = rain.nearestStations(Sky.FARM, NOW);

        assertThat(fallen.notes()).as(what).anyMatch(note -> note.contains(words));
        assertThat(fallen.rain()).hasSize(2);
        assertThat(sky.asked("/stations/KBAD/observations")).isBetween(1, most);
    }

    @Test
    void withoutAnyStationItIsSaidWhy() {
        sky.on(Sky.POINT, Sky.problem(404, "InvalidPoint"));
        assertThat(rain.nearestStations(Sky.FARM, NOW).notes())
                .singleElement()
                .asString()
                .startsWith("nws-stations has nothing for this place (404");
        sky.on(Sky.POINT, Sky.json(Sky.fixture("nws-point.json")));
        sky.on(Sky.GRID + "/stations", Sky.json("{\"features\":[]}"));
        sky.restart();
        assertThat(new ObservedRain(sky.client()).nearestStations(Sky.FARM, NOW).notes())
                .containsExactly("stations: none is known near this place");
    }

    @Test
    void aStationWithAnImpossibleNameIsNotAskedFor() {
        assertThat(rain.station("../x", NOW).notes())
                .containsExactly("station '../x' is not a name");
        assertThat(sky.asked()).isZero();
    }

    @Test
    void twoQuestionsToOneAddressAreKeptApart() {
        posted("{\"data\":[[\"2026-07-13\",3.5]]}");
        rain.daily(Sky.FARM, new Days(DAY, DAY), NOW);
        rain.daily(Sky.FARM, new Days(DAY.minusDays(5), DAY), NOW);
        rain.daily(Sky.FARM, new Days(DAY, DAY), NOW.plus(Duration.ofMinutes(5)));
        assertThat(sky.asked()).isEqualTo(2);
    }

    @Test
    void lastTenDaysAreAskedForAgainOnceADayAndOlderOnesNever() {
        Instant end = Instant.parse("2026-07-15T00:00:00Z");
        assertThat(ObservedRain.due(DAY, Optional.empty(), end)).isTrue();
        Instant early = end.plus(Duration.ofHours(1));
        assertThat(ObservedRain.due(DAY, Optional.of(early), early.plusSeconds(3599)))
                .isFalse();
        assertThat(ObservedRain.due(DAY, Optional.of(early), early.plusSeconds(3600)))
                .isTrue();
        Instant day3 = end.plus(Duration.ofDays(3));
        assertThat(ObservedRain.due(DAY, Optional.of(day3), day3.plus(Duration.ofHours(23))))
                .isFalse();
        assertThat(ObservedRain.due(DAY, Optional.of(day3), day3.plus(Duration.ofHours(24))))
                .isTrue();
        Instant day11 = end.plus(Duration.ofDays(11));
        assertThat(ObservedRain.due(DAY, Optional.of(day11), day11.plus(Duration.ofDays(40))))
                .isFalse();
    }

    private static String reports() {
        return "{\"features\":["
                + report(
                        "2026-07-15T09:53:00+00:00",
                        "{\"unitCode\":\"wmoUnit:mm\",\"value\":0.3,\"qualityControl\":\"V\"}")
                + ","
                + report(
                        "2026-07-15T08:53:00+00:00",
                        "{\"unitCode\":\"unit:m\",\"value\":0.002,\"qualityControl\":\"qc:V\"}")
                + ","
                + report(
                        "2026-07-15T07:53:00+00:00", "{\"unitCode\":\"wmoUnit:mm\",\"value\":null}")
                + ","
                + report(
                        "2026-07-15T06:53:00+00:00",
                        "{\"unitCode\":\"wmoUnit:mm\",\"value\":9,\"qualityControl\":\"X\"}")
                + "]}";
    }

    private static String report(String at, String rain) {
        return "{\"properties\":{\"timestamp\":\"" + at + "\",\"precipitationLastHour\":" + rain
                + "}}";
    }

    private void posted(String answer) {
        sky.server.stubFor(post(urlPathEqualTo("/GridData")).willReturn(Sky.json(answer)));
    }

    private static Window window(String from, String to) {
        return new Window(Instant.parse(from), Instant.parse(to));
    }
}
