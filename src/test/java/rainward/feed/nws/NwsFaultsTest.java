package rainward.feed.nws;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static rainward.feed.Sky.GRID;
import static rainward.feed.Sky.NOW;
import static rainward.feed.Sky.POINT;

import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import com.github.tomakehurst.wiremock.http.Fault;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.zip.GZIPOutputStream;
import okhttp3.OkHttpClient;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.feed.Sky;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Gateway;
import rainward.feed.terms.Service;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.PullOutcome.Failed;
import rainward.weather.source.PullOutcome.Fetched;
import rainward.weather.source.PullOutcome.Kind;

/** The US service on bad days: the outcome, the words for the user, and how often it was asked. */
class NwsFaultsTest {

    private final Sky sky = Sky.fair();

    @AfterEach
    void close() {
        sky.close();
    }

    @Nested
    class TroubleAtTheService {

        @Test
        void twoFailuresAndThenAnAnswerAreOneForecast() {
            sky.inTurn(
                    GRID,
                    Sky.problem(500, "UnexpectedProblem"),
                    Sky.problem(500, "UnexpectedProblem"),
                    Sky.json(Sky.grid()));
            assertThat(sky.outcome()).isInstanceOf(Fetched.class);
            assertThat(sky.asked(GRID)).isEqualTo(3);
            assertThat(sky.waits).hasSize(2).allMatch(w -> w.toMillis() < 4_000);
        }

        @Test
        void failuresWithoutEndKeepTheLastGoodForecast() {
            sky.pull(NOW);
            sky.on(GRID, Sky.problem(500, "UnexpectedProblem"));
            Instant later = NOW.plus(Duration.ofHours(3));
            PullOutcome outcome = sky.pull(later).outcome();
            assertFailed(outcome, Kind.SERVER_FAULT, "nws is in trouble itself (500");
            assertThat(outcome.series().orElseThrow().hourly().start())
                    .isEqualTo("2026-07-15T13:00:00Z");
            assertThat(outcome.series().orElseThrow().stamp().pulledAt()).isEqualTo(NOW);
            assertThat(sky.asked(GRID)).isEqualTo(1 + 3);
        }

        @Test
        void anOfficeThatHasNotDeliveredIsNamedInItsOwnWords() {
            sky.on(GRID, Sky.problem(503, "ForecastGridExpired"));
            assertFailed(sky.outcome(), Kind.SERVER_FAULT, "503, \"ForecastGridExpired\"");
            assertThat(sky.asked(GRID)).isEqualTo(3);
        }

        @Test
        void aWebPageFromTheEdgeIsTroubleToo() {
            sky.on(GRID, Sky.page(503));
            assertFailed(sky.outcome(), Kind.SERVER_FAULT, "503, \"a web page\"");
            assertThat(sky.asked(GRID)).isEqualTo(3);
        }

        @Test
        void aHostThatFailsFiveQuestionsIsLeftAloneAndTriedLaterOnce() {
            sky.pull(NOW);
            sky.on(GRID, Sky.problem(502, "BadGateway"));
            Instant at = NOW.plus(Duration.ofHours(1));
            for (int i = 0; i < 5; i++) {
                at = at.plus(Duration.ofMinutes(1));
                sky.restart();
                assertFailed(sky.pull(at).outcome(), Kind.SERVER_FAULT, "502");
            }
            int asked = sky.asked(GRID);
            assertThat(asked).isEqualTo(1 + 3 + 4);
            sky.restart();
            PullOutcome paused = sky.pull(at.plus(Duration.ofMinutes(14))).outcome();
            assertFailed(
                    paused, Kind.PAUSED, "nws is left alone until 2026-07-15T11:40:00Z: is in");
            assertThat(sky.asked(GRID)).isEqualTo(asked);
            sky.on(GRID, Sky.json(Sky.grid()));
            assertThat(sky.pull(at.plus(Duration.ofMinutes(15))).outcome())
                    .isInstanceOf(Fetched.class);
            assertThat(sky.asked(GRID)).isEqualTo(asked + 1);
        }
    }

    @Nested
    class TurnedAway {

        @Test
        void tooManyRequestsWithAShortWaitIsAskedOnceMore() {
            sky.inTurn(
                    GRID,
                    Sky.problem(429, "RateLimit").withHeader("Retry-After", "5"),
                    Sky.json(Sky.grid()));
            assertThat(sky.outcome()).isInstanceOf(Fetched.class);
            assertThat(sky.waits).containsExactly(Duration.ofSeconds(5));
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        @Test
        void tooManyRequestsWithoutAWaitPausesFiveToTenSecondsAndThenAMinute() {
            sky.on(GRID, Sky.problem(429, "RateLimit"));
            PullOutcome outcome = sky.outcome();
            assertFailed(outcome, Kind.THROTTLED, "asked too often (429");
            assertThat(sky.waits)
                    .hasSize(1)
                    .allMatch(w -> w.toSeconds() >= 5 && w.toSeconds() < 10);
            assertThat(sky.asked(GRID)).isEqualTo(2);
            assertThat(((Failed) outcome).retryAt().orElseThrow())
                    .isAfter(NOW.plus(Duration.ofMinutes(1)));
        }

        @Test
        void anAbsurdWaitIsCutToADayAndNotWaitedFor() {
            sky.on(GRID, Sky.problem(429, "RateLimit").withHeader("Retry-After", "99999999999"));
            PullOutcome outcome = sky.outcome();
            assertFailed(outcome, Kind.THROTTLED, "asked too often");
            assertThat(((Failed) outcome).retryAt()).contains(NOW.plus(Duration.ofHours(24)));
            assertThat(sky.asked(GRID)).isEqualTo(1);
            assertThat(sky.waits).isEmpty();
        }

        @Test
        void anAbsurdWaitWith503DoesNotBreakTheClient() {
            sky.on(GRID, Sky.problem(503, "Down").withHeader("Retry-After", "99999999999"));
            assertFailed(sky.outcome(), Kind.SERVER_FAULT, "503");
            assertThat(sky.asked(GRID)).isEqualTo(1);
        }

        @Test
        void noWaitAtAllWith503IsStillOursToPace() {
            sky.on(GRID, Sky.problem(503, "Down").withHeader("Retry-After", "0"));
            assertFailed(sky.outcome(), Kind.SERVER_FAULT, "503");
            assertThat(sky.asked(GRID)).isEqualTo(3);
        }

        @Test
        void aWaitThatMeansNothingIsIgnored() {
            sky.inTurn(
                    GRID,
                    Sky.problem(503, "Down").withHeader("Retry-After", "soon"),
                    Sky.json(Sky.grid()));
            assertThat(sky.outcome()).isInstanceOf(Fetched.class);
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        @Test
        void beingBlockedStopsUsForSixHours() {
            sky.on(POINT, Sky.page(403));
            assertFailed(sky.outcome(), Kind.BLOCKED, "nws turns us away (403");
            sky.restart();
            PullOutcome later = sky.pull(NOW.plus(Duration.ofMinutes(359))).outcome();
            assertFailed(later, Kind.PAUSED, "check the contact in the settings");
            assertThat(sky.asked()).isEqualTo(1);
            assertThat(sky.waits).isEmpty();
        }
    }

    @Nested
    class Places {

        @Test
        void aPlaceOutsideTheCountryIsNotServedAndAskedOnce() {
            sky.on(POINT, Sky.problem(404, "InvalidPoint"));
            assertFailed(sky.outcome(), Kind.NOT_SERVED, "nws has nothing for this place (404");
            assertThat(sky.asked()).isEqualTo(1);
        }

        @Test
        void aPlaceWithoutAGridIsNotServed() {
            sky.on(
                    POINT,
                    Sky.json("{\"properties\":{\"gridId\":null,\"gridX\":null,\"gridY\":null}}"));
            assertFailed(sky.outcome(), Kind.NOT_SERVED, "no forecast grid at this place");
        }

        @Test
        void aMovedGridIsLookedUpAgainOnce() {
            sky.pull(NOW);
            sky.on(GRID, Sky.problem(404, "MarineForecastNotSupported"));
            sky.on(POINT, Sky.json(Sky.fixture("nws-point.json").replace("41", "44")));
            sky.on("/gridpoints/MIX/44,27", Sky.json(Sky.grid()));
            var pull = sky.pull(NOW.plus(Duration.ofHours(2)));
            assertThat(pull.outcome()).isInstanceOf(Fetched.class);
            assertThat(Sky.series(pull).warnings())
                    .contains(
                            "the grid has moved: gridpoints/MIX/41,27 is now gridpoints/MIX/44,27");
            assertThat(sky.asked(POINT)).isEqualTo(2);
        }

        @Test
        void aGridThatIsGoneForGoodIsLookedUpOnceAndGivenUp() {
            sky.pull(NOW);
            sky.on(GRID, Sky.problem(404, "InvalidGridpoint"));
            assertFailed(sky.pull(NOW.plus(Duration.ofHours(2))).outcome(), Kind.NOT_SERVED, "404");
            assertThat(sky.asked(POINT)).isEqualTo(2);
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        @Test
        void aRedirectWithinTheHostIsFollowed() {
            sky.on(POINT, moved("/points/42.1000,-84.2000"));
            sky.on("/points/42.1000,-84.2000", Sky.json(Sky.fixture("nws-point.json")));
            assertThat(sky.outcome()).isInstanceOf(Fetched.class);
        }

        @Test
        void aRedirectToAnotherHostIsNotFollowed() {
            sky.on(POINT, moved("http://elsewhere.example/points"));
            assertFailed(sky.outcome(), Kind.UNREADABLE, "not the host that was asked");
            assertThat(sky.asked()).isEqualTo(1);
        }

        @Test
        void redirectsInACircleEnd() {
            sky.on(POINT, moved(POINT));
            assertFailed(sky.outcome(), Kind.UNREADABLE, "sends us in circles");
            assertThat(sky.asked()).isEqualTo(4);
        }

        @Test
        void aFarmOutsideTheCellIsToldSo() {
            var nws = new NationalWeatherService(sky.client());
            sky.on("/points/43,-84.2", Sky.json(Sky.fixture("nws-point.json")));
            var series = Sky.series(nws.pull(new GeoPoint(43, -84.2), NOW));
            assertThat(series.warnings()).contains("the grid cell does not hold the farm's place");
        }
    }

    @Nested
    class TheWire {

        @Test
        void anAnswerThatDripsIsCutOffByTheTotalTime() {
            sky.on(GRID, Sky.json(Sky.grid()).withChunkedDribbleDelay(40, 20_000));
            assertFailed(sky.outcome(), Kind.UNREACHABLE, "did not finish its answer within 1 s");
            assertThat(sky.asked(GRID)).isEqualTo(3);
        }

        @Test
        void aSilentServerIsNotWaitedForLong() {
            sky.on(GRID, Sky.json(Sky.grid()).withFixedDelay(10_000));
            assertFailed(sky.outcome(), Kind.UNREACHABLE, "did not finish");
            assertThat(sky.asked(GRID)).isEqualTo(3);
        }

        @Test
        void aBodyCutShortIsTriedAgain() {
            String grid = Sky.grid();
            sky.inTurn(
                    GRID,
                    Sky.json(grid.substring(0, 5000))
                            .withHeader("Content-Length", Integer.toString(grid.length())),
                    Sky.json(grid));
            assertThat(sky.outcome()).isInstanceOf(Fetched.class);
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        @Test
        void aGzipBombIsRefusedAfterTheCap() throws IOException {
            sky.on(
                    GRID,
                    aResponse()
                            .withHeader("Content-Type", Sky.GEO)
                            .withHeader("Content-Encoding", "gzip")
                            .withBody(gzip(200)));
            assertFailed(sky.outcome(), Kind.UNREADABLE, "sent more than 4096 KB");
        }

        @Test
        void aBrokenGzipIsABrokenAnswer() throws IOException {
            byte[] whole = gzip(1);
            sky.on(
                    GRID,
                    aResponse()
                            .withHeader("Content-Type", Sky.GEO)
                            .withHeader("Content-Encoding", "gzip")
                            .withBody(Arrays.copyOf(whole, whole.length / 2)));
            assertFailed(sky.outcome(), Kind.UNREACHABLE, "in the middle of the answer");
        }

        @Test
        void aConnectionResetIsTriedThreeTimes() {
            sky.on(GRID, aResponse().withFault(Fault.CONNECTION_RESET_BY_PEER));
            assertFailed(sky.outcome(), Kind.UNREACHABLE, "in the middle of the answer");
            assertThat(sky.waits).hasSize(2);
        }

        @Test
        void anEmptyReplyAndGarbageAreTheSame() {
            sky.on(GRID, aResponse().withFault(Fault.RANDOM_DATA_THEN_CLOSE));
            assertFailed(sky.outcome(), Kind.UNREACHABLE, "nws");
        }

        @Test
        void aNameThatCannotBeLookedUpIsSaidSo() {
            sky.base = new OkHttpClient.Builder()
                    .dns(host -> {
                        throw new UnknownHostException(host);
                    })
                    .build();
            sky.settings = sky.settings.at(Service.NWS, java.net.URI.create("https://sky.example"));
            assertFailed(sky.outcome(), Kind.UNREACHABLE, "the name sky.example has no address");
            assertThat(sky.waits).hasSize(2);
        }

        @Test
        void aBadCertificateIsNotTriedAgain() {
            try (Sky safe = new Sky()) {
                var https = new com.github.tomakehurst.wiremock.WireMockServer(
                        com.github.tomakehurst.wiremock.core.WireMockConfiguration.options()
                                .dynamicPort()
                                .dynamicHttpsPort());
                https.start();
                safe.settings = safe.settings.at(
                        Service.NWS, java.net.URI.create("https://localhost:" + https.httpsPort()));
                assertFailed(safe.outcome(), Kind.UNTRUSTED, "cannot prove who it is");
                assertThat(safe.waits).isEmpty();
                https.stop();
            }
        }

        @Test
        void aClockThatIsWrongIsNamedAndChangesNothing() {
            FeedSettings.Pace pace = sky.settings.pace();
            sky.settings = new FeedSettings(
                    sky.settings.identity(),
                    sky.settings.addresses(),
                    new FeedSettings.Pace(pace.connect(), pace.read(), pace.call(), 2, 3, true),
                    sky.settings.openMeteo(),
                    Gateway.NONE);
            sky.on(
                    GRID,
                    Sky.json(Sky.grid())
                            .withHeader("Date", "Wed, 15 Jul 2026 09:50:00 GMT")
                            .withHeader("Expires", "Wed, 15 Jul 2026 10:10:00 GMT"));
            var series = Sky.series(sky.pull(NOW));
            assertThat(series.warnings())
                    .anyMatch(
                            w -> w.startsWith("this PC's clock is 30 minutes ahead of the clock"));
            // Twenty minutes by the server's own clock, though its Expires lies behind ours.
            sky.pull(NOW.plus(Duration.ofMinutes(19)));
            assertThat(sky.asked(GRID)).isEqualTo(1);
            sky.pull(NOW.plus(Duration.ofMinutes(21)));
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        private byte[] gzip(int megabytes) throws IOException {
            var bytes = new ByteArrayOutputStream();
            try (var zip = new GZIPOutputStream(bytes)) {
                byte[] spaces = " ".repeat(1_048_576).getBytes(StandardCharsets.UTF_8);
                for (int i = 0; i < megabytes; i++) {
                    zip.write(spaces);
                }
            }
            return bytes.toByteArray();
        }
    }

    @Nested
    class OldNews {

        private final String old = Sky.grid().replace("2026-07-15T09:12", "2026-07-14T04:12");

        @Test
        void anEdgeWithAnOldCopyIsAskedForTheOtherForm() {
            sky.server.stubFor(
                    com.github.tomakehurst.wiremock.client.WireMock.get(urlPathEqualTo(GRID))
                            .withHeader("Accept", equalTo("application/geo+json"))
                            .willReturn(Sky.json(old)
                                    .withHeader("Last-Modified", "Thu, 16 Jul 2026 10:00:00 GMT")));
            sky.server.stubFor(
                    com.github.tomakehurst.wiremock.client.WireMock.get(urlPathEqualTo(GRID))
                            .withHeader("Accept", equalTo("application/ld+json"))
                            .willReturn(Sky.json(Sky.grid())));
            var series = Sky.series(sky.pull(NOW));
            assertThat(series.stamp().issuedAt()).isEqualTo("2026-07-15T09:12:00Z");
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        @Test
        void anOlderCopyNeverReplacesANewerOne() {
            sky.pull(NOW);
            sky.on(GRID, Sky.json(old));
            PullOutcome outcome = sky.pull(NOW.plus(Duration.ofHours(2))).outcome();
            assertFailed(outcome, Kind.STALE, "issued 32 h ago, older than the one kept");
            assertThat(outcome.series().orElseThrow().stamp().issuedAt())
                    .isEqualTo("2026-07-15T09:12:00Z");
            assertThat(sky.asked(GRID)).isEqualTo(1 + 2);
        }

        @Test
        void anOlderCopyIsRefusedEvenIfItIsOfToday() {
            sky.pull(NOW);
            sky.on(GRID, Sky.json(Sky.grid().replace("2026-07-15T09:12", "2026-07-15T05:12")));
            PullOutcome outcome = sky.pull(NOW.plus(Duration.ofHours(2))).outcome();
            assertFailed(outcome, Kind.STALE, "issued 7 h ago, older than the one kept");
            assertThat(outcome.series().orElseThrow().stamp().issuedAt())
                    .isEqualTo("2026-07-15T09:12:00Z");
        }

        @Test
        void anOldForecastIsBetterThanNoneAndSaysSo() {
            sky.on(GRID, Sky.json(old));
            var series = Sky.series(sky.pull(NOW));
            assertThat(series.stamp().issuedAt()).isEqualTo("2026-07-14T04:12:00Z");
            assertThat(series.warnings())
                    .contains("this forecast is an old one, the service has no newer");
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        @Test
        void aForecastThatEndsBeforeNowIsNone() {
            PullOutcome outcome =
                    sky.pull(Instant.parse("2026-08-01T00:00:00Z")).outcome();
            assertFailed(outcome, Kind.STALE, "an old forecast");
            assertThat(outcome.series()).isEmpty();
        }
    }

    @Nested
    class KeptCopies {

        @Test
        void aCopyThatIsNotWholeCountsAsAbsent() {
            sky.pull(NOW);
            var address = sky.settings.address(Service.NWS) + GRID;
            var copy = sky.copies.find(address).orElseThrow();
            byte[] cut = Arrays.copyOf(copy.body(), 5000);
            sky.copies.keep(new rainward.weather.source.LastGoodCopies.Copy(
                    address, copy.headers(), cut, copy.sha256(), copy.times()));
            assertThat(sky.pull(NOW.plusSeconds(60)).outcome()).isInstanceOf(Fetched.class);
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        @Test
        void aClockSetBackDoesNotMakeAnOldCopyFreshForever() {
            sky.pull(NOW);
            sky.pull(NOW.minus(Duration.ofHours(5)));
            assertThat(sky.asked(GRID)).isEqualTo(2);
        }

        @Test
        void anAbsurdExpiryIsCutToADay() {
            sky.on(GRID, Sky.json(Sky.grid()).withHeader("Cache-Control", "max-age=999999999"));
            sky.pull(NOW);
            sky.pull(NOW.plus(Duration.ofHours(25)));
            assertThat(sky.asked(GRID)).isGreaterThan(1);
        }
    }

    @Nested
    class NotData {

        @Test
        void aWebPageWith200IsNoForecastAndTheLastGoodOneStays() {
            sky.pull(NOW);
            sky.on(GRID, Sky.page(200));
            PullOutcome outcome = sky.pull(NOW.plus(Duration.ofHours(2))).outcome();
            assertFailed(outcome, Kind.UNREADABLE, "nws sent a web page instead of data");
            assertThat(outcome.series()).isPresent();
            assertThat(sky.asked(GRID)).isEqualTo(1 + 2);
        }

        @Test
        void anEmptyAnswerIsSaidSo() {
            sky.on(GRID, Sky.json(""));
            assertFailed(sky.outcome(), Kind.UNREADABLE, "sent an empty answer");
        }

        @Test
        void aDocumentCutInTheMiddleSaysWhere() {
            sky.on(GRID, Sky.json(Sky.grid().substring(0, 9000)));
            assertFailed(sky.outcome(), Kind.UNREADABLE, "not whole, broken at line ");
        }

        @Test
        void textAfterTheDocumentSpoilsItWhole() {
            sky.on(GRID, Sky.json(Sky.grid() + "Unexpected error while streaming data"));
            assertFailed(sky.outcome(), Kind.UNREADABLE, "not whole");
        }

        @Test
        void nothingButNullIsNoDocument() {
            sky.on(GRID, Sky.json("null"));
            assertFailed(sky.outcome(), Kind.UNREADABLE, "not a JSON document");
        }

        @Test
        void aForecastWithoutTemperatureIsNone() {
            sky.on(GRID, Sky.json("{\"properties\":{\"updateTime\":\"2026-07-15T09:12:00Z\"}}"));
            assertFailed(
                    sky.outcome(),
                    Kind.UNREADABLE,
                    "without a readable temperature (temperature: not sent)");
        }
    }

    private static ResponseDefinitionBuilder moved(String where) {
        return aResponse().withStatus(301).withHeader("Location", where);
    }

    private static void assertFailed(PullOutcome outcome, Kind kind, String words) {
        Consumer<Failed> check = f -> {
            assertThat(f.kind()).isEqualTo(kind);
            assertThat(f.words()).contains(words);
        };
        assertThat(outcome).isInstanceOfSatisfying(Failed.class, check);
    }
}
