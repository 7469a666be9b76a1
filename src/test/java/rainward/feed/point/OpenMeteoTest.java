package rainward.feed.point;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.getRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.feed.Sky.NOW;
import static rainward.feed.point.MetNorwayTest.assertFailed;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rainward.feed.Sky;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Gateway;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.Pull;
import rainward.weather.source.PullOutcome.Failed;
import rainward.weather.source.PullOutcome.Kind;
import rainward.weather.source.PullOutcome.Unchanged;

/** The opt-in service: sums of the hour before, errors inside answers, members of ensembles. */
class OpenMeteoTest {

    private static final String PATH = "/v1/forecast";

    private final Sky sky = new Sky();

    @BeforeEach
    void allowed() {
        allow(Optional.of("k3y"), Optional.of("gem_global"));
        sky.on(PATH, Sky.json(Sky.fixture("open-meteo.json")));
        sky.on("/v1/ensemble", Sky.json(Sky.fixture("open-meteo-ensemble.json")));
    }

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void itIsNotAskedUnlessTheUserSaysSo() {
        FeedSettings.Identity who = sky.settings.identity();
        sky.settings = new FeedSettings(
                who, sky.settings.addresses(), sky.settings.pace(), Optional.empty(), Gateway.NONE);
        assertFailed(pull(NOW).outcome(), Kind.DISABLED, "free tier is for non-commercial use");
        assertThat(sky.asked()).isZero();
    }

    @Test
    void rainBelongsToTheHourBeforeItsTime() {
        ForecastSeries series = Sky.series(pull(NOW));
        // 0.4 mm stands at 18:00, so it falls from 17 to 18.
        assertThat(series.rain().amounts())
                .filteredOn(a -> a.amountMm() > 0)
                .first()
                .satisfies(
                        a -> assertThat(a.window().from()).isEqualTo("2026-07-15T17:00:00Z"),
                        a -> assertThat(a.amountMm()).isCloseTo(0.4, within(1e-12)));
        assertThat(series.rain().probabilities())
                .filteredOn(c -> c.probability() == 0.3)
                .first()
                .satisfies(c -> assertThat(c.window().to()).isEqualTo("2026-07-15T18:00:00Z"));
    }

    @Test
    void itAsksForUtcAndUnixTimeAndKeepsTheKeyOutOfTheRecord() {
        Pull pull = pull(NOW);
        sky.server.verify(
                1,
                getRequestedFor(urlPathEqualTo(PATH))
                        .withQueryParam("timezone", equalTo("GMT"))
                        .withQueryParam("timeformat", equalTo("unixtime"))
                        .withQueryParam("latitude", equalTo("42.1"))
                        .withQueryParam("apikey", equalTo("k3y")));
        assertThat(pull.answers().get(0).address()).doesNotContain("k3y");
        assertThat(pull.toString()).doesNotContain("k3y");
        assertThat(sky.settings.toString()).doesNotContain("k3y");
    }

    @Test
    void itIsAskedOnceAnHourBecauseItsAnswersDoNotSayHowLongTheyHold() {
        pull(NOW);
        assertThat(pull(NOW.plus(Duration.ofMinutes(59))).outcome()).isInstanceOf(Unchanged.class);
        assertThat(sky.asked()).isEqualTo(1);
        pull(NOW.plus(Duration.ofMinutes(61)));
        assertThat(sky.asked()).isEqualTo(2);
    }

    @Test
    void anErrorIsReadAsTheErrorItIs() {
        sky.on(
                PATH,
                Sky.json("{\"error\":true,\"reason\":\"Parameter x out of range\"}")
                        .withStatus(400));
        assertFailed(pull(NOW).outcome(), Kind.REFUSED, "400, \"Parameter x out of range\"");
        sky.restart();
        sky.on(PATH, Sky.json("{\"error\":true,\"reason\":\"No data\"}"));
        assertFailed(
                pull(NOW.plusSeconds(1)).outcome(), Kind.UNREADABLE, "sent an error: \"No data\"");
    }

    @Test
    void anErrorInTheMiddleOfTheStreamSpoilsTheAnswerWhole() {
        String whole = Sky.fixture("open-meteo.json");
        sky.on(
                PATH,
                Sky.json(whole.substring(0, 4000) + "Unexpected error while streaming data: gone"));
        assertFailed(pull(NOW).outcome(), Kind.UNREADABLE, "not whole");
        sky.restart();
        sky.on(PATH, Sky.json(whole + "Unexpected error while streaming data: gone"));
        assertFailed(pull(NOW.plusSeconds(1)).outcome(), Kind.UNREADABLE, "not whole");
        assertThat(sky.asked()).isEqualTo(2);
    }

    @Test
    void theLimitThatWasReachedSaysWhenToComeBack() {
        sky.on(
                PATH,
                Sky.json("{\"error\":true,\"reason\":\"Hourly API request limit exceeded.\"}")
                        .withStatus(429));
        var outcome = (Failed) pull(NOW).outcome();
        assertThat(outcome.kind()).isEqualTo(Kind.THROTTLED);
        assertThat(outcome.retryAt()).contains(NOW.plus(Duration.ofHours(1)));
        assertThat(sky.asked()).isEqualTo(1);
    }

    @Test
    void aWrongKeyStopsIt() {
        sky.on(PATH, aResponse().withStatus(401));
        assertFailed(pull(NOW).outcome(), Kind.BLOCKED, "and the key");
    }

    @Test
    void absurdRainIsUnknownAndNamed() {
        sky.on(PATH, Sky.json(Sky.fixture("open-meteo.json").replaceFirst("0\\.4", "-3276.8")));
        assertThat(Sky.series(pull(NOW)).warnings())
                .contains("precipitation: 1 interval left out, the first because -3276.8 is not"
                        + " believable");
    }

    @Test
    void aColumnOfNullsIsUnknownNotDry() {
        String nulls = Sky.fixture("open-meteo.json")
                .replaceAll("(\"precipitation\": \\[)[^]]*", "$1" + "null, ".repeat(239) + "null");
        sky.on(PATH, Sky.json(nulls));
        ForecastSeries series = Sky.series(pull(NOW));
        assertThat(series.rain().amounts()).isEmpty();
        assertThat(series.warnings()).contains("rain amount: none known");
    }

    @Test
    void localTimesAreReadWithTheDocumentsOffset() throws Unreadable {
        Notes notes = new Notes();
        String body = "{\"utc_offset_seconds\":-14400,\"hourly_units\":{\"temperature_2m\":\"°F\"},"
                + "\"hourly\":{\"time\":[\"2026-07-15T06:00\",\"2026-07-15T07:00\"],"
                + "\"temperature_2m\":[50,68]}}";
        var hours = Columns.of(body.getBytes(java.nio.charset.StandardCharsets.UTF_8), notes)
                .moments("temperature_2m", Quantity.AIR_TEMP);
        assertThat(hours).hasSize(1);
        assertThat(hours.get(0).window().from()).isEqualTo("2026-07-15T10:00:00Z");
        assertThat(hours.get(0).value()).isCloseTo(15, within(1e-9));
    }

    @Test
    void membersAreFoundByTheirNamesAndABrokenOneIsLeftOut() {
        var rain = new OpenMeteo(sky.client()).members(Sky.FARM, NOW).rain().orElseThrow();
        assertThat(rain.members()).isEqualTo(3);
        assertThat(rain.hours()).isEqualTo(48);
        assertThat(rain.start()).isEqualTo("2026-07-14T23:00:00Z");
        assertThat(rain.rainMm()[2][40]).isCloseTo(0.2, within(1e-12));
        assertThat(rain.warnings())
                .contains("precipitation_member03: 1 interval left out, the first because it has no"
                        + " value");
    }

    @Test
    void withoutAModelThereIsNoEnsemble() {
        allow(Optional.of("k3y"), Optional.empty());
        assertThat(new OpenMeteo(sky.client()).members(Sky.FARM, NOW).rain()).isEmpty();
        assertThat(sky.asked()).isZero();
    }

    private void allow(Optional<String> key, Optional<String> model) {
        sky.settings = new FeedSettings(
                sky.settings.identity(),
                sky.settings.addresses(),
                sky.settings.pace(),
                Optional.of(new FeedSettings.OpenMeteoTerms(key, model)),
                Gateway.NONE);
    }

    private Pull pull(Instant asOf) {
        return new OpenMeteo(sky.client()).pull(Sky.FARM, asOf);
    }
}
