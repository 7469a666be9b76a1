package rainward.feed.point;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.getRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.feed.Sky.NOW;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.feed.Sky;
import rainward.weather.rain.RainAmount;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.PullOutcome.Failed;
import rainward.weather.source.PullOutcome.Kind;
import rainward.weather.source.PullOutcome.Unchanged;

/** The world-wide service: overlapping rain, instants, expiry, and its own meaning of statuses. */
public class MetNorwayTest {

    private static final String PATH = "/weatherapi/locationforecast/2.0/complete";

    private final Sky sky = new Sky();

    @BeforeEach
    void fair() {
        sky.on(
                PATH,
                Sky.json(Sky.fixture("met-complete.json"))
                        .withHeader("Date", "Wed, 15 Jul 2026 10:20:00 GMT")
                        .withHeader("Expires", "Wed, 15 Jul 2026 10:51:07 GMT")
                        .withHeader("Last-Modified", "Wed, 15 Jul 2026 10:20:11 GMT"));
    }

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void singleHoursCountWhereTheyAreGivenAndSixHoursOnlyAtTheTail() {
        ForecastSeries series = Sky.series(pull(NOW));
        // Six single hours of 0.5 mm, then 25 stretches of 1.5 mm; the 9.9 mm overlap and do not
        // count.
        assertThat(series.rain().amounts()).hasSize(54 + 25);
        assertThat(series.rain().amounts().stream()
                        .mapToDouble(RainAmount::amountMm)
                        .sum())
                .isCloseTo(6 * 0.5 + 25 * 1.5, within(1e-9));
        assertThat(series.rain().probabilities()).isEmpty();
        assertThat(series.warnings())
                .contains("rain chance: not given here by this service, reckoned from its amounts");
        assertThat(series.stamp().issuedAt()).isEqualTo("2026-07-15T08:31:00Z");
    }

    @Test
    void hoursBetweenInstantsLieOnTheLineBetweenThem() {
        ForecastSeries series = Sky.series(pull(NOW));
        assertThat(series.hourly().hours()).isEqualTo(54 + 25 * 6);
        assertThat(series.hourly().airTempC()[0]).isCloseTo(20.125, within(1e-9));
        assertThat(series.hourly().windMps()[0]).isCloseTo(2.4, within(0.05));
        assertThat(series.hourly().skyCoverFraction()[60]).isCloseTo(0.4, within(1e-9));
    }

    @Test
    void coordinatesAreShortAndTheSameForNeighbours() {
        pull(NOW);
        new MetNorway(sky.client()).pull(new GeoPoint(42.1004, -84.1999), NOW);
        sky.server.verify(1, getRequestedFor(urlEqualTo(PATH + "?lat=42.1&lon=-84.2")));
        assertThat(sky.asked()).isEqualTo(1);
    }

    @Test
    void nothingIsAskedBeforeItExpiresAndThenWithTheExactEarlierDate() {
        pull(NOW);
        for (int restart = 0; restart < 20; restart++) {
            sky.restart();
            pull(NOW.plus(Duration.ofMinutes(restart)));
        }
        assertThat(sky.asked()).isEqualTo(1);
        sky.on(PATH, aResponse().withStatus(304));
        assertThat(pull(NOW.plus(Duration.ofMinutes(40))).outcome()).isInstanceOf(Unchanged.class);
        sky.server.verify(
                1,
                getRequestedFor(urlEqualTo(PATH + "?lat=42.1&lon=-84.2"))
                        .withHeader("If-Modified-Since", equalTo("Wed, 15 Jul 2026 10:20:11 GMT")));
    }

    @Test
    void aProductAboutToBeRetiredIsUsedAndToldSo() {
        sky.on(PATH, Sky.json(Sky.fixture("met-complete.json")).withStatus(203));
        assertThat(Sky.series(pull(NOW)).warnings())
                .contains("met-norway says that this product is about to be retired");
    }

    @Test
    void tooManyRequestsPauseForAnHour() {
        sky.on(PATH, aResponse().withStatus(429));
        assertFailed(
                pull(NOW).outcome(), Kind.THROTTLED, "met-norway says that it is asked too often");
        assertFailed(
                pull(NOW.plus(Duration.ofMinutes(59))).outcome(),
                Kind.PAUSED,
                "met-norway is left alone until 2026-07-15T11:20:00Z");
        assertThat(sky.asked()).isEqualTo(1);
    }

    @Test
    void aPlaceOutsideItsAreaIsNotServed() {
        sky.on(PATH, aResponse().withStatus(422));
        assertFailed(pull(NOW).outcome(), Kind.NOT_SERVED, "nothing for this place (422)");
    }

    @Test
    void aBadRequestWithAWebPageIsOurFault() {
        sky.on(PATH, Sky.page(400));
        assertFailed(pull(NOW).outcome(), Kind.REFUSED, "does not accept the question (400");
        assertThat(sky.asked()).isEqualTo(1);
    }

    @Test
    void overloadIsTriedAgain() {
        sky.inTurn(PATH, aResponse().withStatus(499), Sky.json(Sky.fixture("met-complete.json")));
        assertThat(pull(NOW).outcome().series()).isPresent();
        assertThat(sky.asked()).isEqualTo(2);
    }

    @Test
    void chanceOfRainIsUsedWhereItIsGiven() {
        sky.on(
                PATH,
                Sky.json(Sky.fixture("met-complete.json")
                        .replace(
                                "\"precipitation_amount\": 0.5",
                                "\"precipitation_amount\": 0.5, \"probability_of_precipitation\":"
                                        + " 62.5")));
        assertThat(Sky.series(pull(NOW)).rain().probabilities())
                .hasSize(6)
                .allMatch(c -> c.probability() == 0.625);
    }

    @Test
    void brokenStepsAndWildValuesAreNamedAndLeftOut() {
        sky.on(
                PATH,
                Sky.json(Sky.fixture("met-complete.json")
                        .replace("2026-07-15T13:00:00Z", "later")
                        .replace("\"wind_speed\": 3.2", "\"wind_speed\": 3200")));
        ForecastSeries series = Sky.series(pull(NOW));
        assertThat(series.warnings())
                .contains(
                        "timeseries: 1 interval left out, the first because 'later' is not a time",
                        "windSpeed: 204 h unknown, assumed 2 m/s at 2 m");
    }

    @Test
    void aDocumentWithoutStepsIsNoForecast() {
        sky.on(PATH, Sky.json("{\"properties\":{\"timeseries\":[]}}"));
        assertFailed(pull(NOW).outcome(), Kind.UNREADABLE, "without time steps");
        assertThat(sky.asked()).isEqualTo(1);
    }

    private rainward.weather.source.Pull pull(Instant asOf) {
        return new MetNorway(sky.client()).pull(Sky.FARM, asOf);
    }

    public static void assertFailed(
            rainward.weather.source.PullOutcome outcome, Kind kind, String words) {
        assertThat(outcome).isInstanceOfSatisfying(Failed.class, f -> {
            assertThat(f.kind()).isEqualTo(kind);
            assertThat(f.words()).contains(words);
        });
    }
}
