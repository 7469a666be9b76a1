package rainward.feed.nws;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.anyUrl;
import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.getRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.feed.Sky.NOW;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.feed.Sky;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainShares;
import rainward.weather.sky.AirPhysics;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.PullOutcome.Fetched;
import rainward.weather.source.PullOutcome.Unchanged;

/** The US service on a good day: what it sends becomes hours and intervals without loss. */
class NationalWeatherServiceTest {

    private final Sky sky = Sky.fair();

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void hoursStartAtTheFullHourAndHoldWhatTheLayersSay() {
        ForecastSeries series = Sky.series(sky.pull(NOW));
        assertThat(series.hourly().start()).isEqualTo("2026-07-15T10:00:00Z");
        assertThat(series.hourly().hours()).isEqualTo(164);
        assertThat(series.stamp().source()).isEqualTo("nws");
        assertThat(series.stamp().issuedAt()).isEqualTo("2026-07-15T09:12:00Z");
        assertThat(series.stamp().pulledAt()).isEqualTo(NOW);
        assertThat(series.hourly().skyCoverFraction()[0]).isEqualTo(0.20);
        assertThat(series.hourly().skyCoverFraction()[2]).isEqualTo(0.55);
        assertThat(series.hourly().dewPointC()[1]).isEqualTo(14);
        assertThat(series.hourly().dewPointC()[2]).isEqualTo(15);
    }

    @Test
    void windAtTenMetresIsBroughtToTwo() {
        // FAO-56, example 14: 3.2 m/s at 10 m is 2.4 m/s at 2 m.
        assertThat(AirPhysics.windAt2mMps(3.2, 10)).isCloseTo(2.4, within(0.05));
        ForecastSeries series = Sky.series(sky.pull(NOW));
        assertThat(series.hourly().windMps()[0])
                .isCloseTo(AirPhysics.windAt2mMps(12.96 / 3.6, 10), within(1e-12));
    }

    @Test
    void amountsStayIntervalsAndTheOneUnderWayGivesItsRest() {
        ForecastSeries series = Sky.series(sky.pull(Instant.parse("2026-07-15T20:00:00Z")));
        RainAmount first = series.rain().amounts().get(0);
        // 0.3 mm from 18 to 24 UTC, four of six hours left.
        assertThat(first.window().from()).isEqualTo("2026-07-15T20:00:00Z");
        assertThat(first.amountMm()).isCloseTo(0.2, within(1e-12));
        assertThat(total(series) - first.amountMm()).isCloseTo(26.44, within(1e-9));
    }

    @Test
    void hourlyRainAddsUpToTheIntervals() {
        ForecastSeries series = Sky.series(sky.pull(NOW));
        double[] hourly =
                RainShares.hourlyMm(series.rain().amounts(), series.hourly().start(), 200);
        double sum = 0;
        for (double mm : hourly) {
            sum += mm;
        }
        assertThat(sum).isCloseTo(26.74, within(1e-9)).isCloseTo(total(series), within(1e-9));
    }

    @Test
    void longRunsOfChanceAreCutIntoTheServicesPeriods() {
        ForecastSeries series = Sky.series(sky.pull(NOW));
        assertThat(series.rain().probabilities())
                .allMatch(c -> c.window().length().compareTo(Duration.ofHours(6)) <= 0)
                .filteredOn(c -> c.probability() == 0.2)
                .hasSize(5);
    }

    @Test
    void warningsSayWhereAmountsEndBeforeChances() {
        assertThat(Sky.series(sky.pull(NOW)).warnings())
                .containsExactly(
                        "rain amount: ends at 2026-07-18T06:00:00Z, chance at 2026-07-22T06:00:00Z");
    }

    @Test
    void everyRequestSaysWhoAsksAndForWhatForm() {
        sky.pull(NOW);
        sky.server.verify(
                2,
                getRequestedFor(anyUrl())
                        .withHeader("User-Agent", equalTo("Rainward/test (crew@farm.example)"))
                        .withHeader("Accept", equalTo("application/geo+json"))
                        .withHeader("Accept-Encoding", equalTo("gzip")));
    }

    @Test
    void aFreshCopyIsNotAskedForAgainEvenAfterARestart() {
        assertThat(sky.outcome()).isInstanceOf(Fetched.class);
        for (int i = 1; i <= 20; i++) {
            sky.restart();
            var again = sky.pull(NOW.plus(Duration.ofMinutes(2 * i))).outcome();
            assertThat(again).isInstanceOf(Unchanged.class);
        }
        assertThat(sky.asked()).isEqualTo(2);
    }

    @Test
    void anExpiredCopyIsAskedForWithItsOwnDateAndConfirmed() {
        String stamp = "Wed, 15 Jul 2026 09:13:00 GMT";
        sky.on(
                Sky.GRID,
                Sky.json(Sky.grid())
                        .withHeader("Last-Modified", stamp)
                        .withHeader("Cache-Control", "max-age=600"));
        sky.pull(NOW);
        sky.on(Sky.GRID, aResponse().withStatus(304));
        Instant later = NOW.plus(Duration.ofMinutes(30));
        var outcome = sky.pull(later).outcome();
        assertThat(outcome).isInstanceOfSatisfying(Unchanged.class, u -> {
            assertThat(u.confirmedAt()).isEqualTo(later);
            assertThat(u.forecast().stamp().pulledAt()).isEqualTo(later);
        });
        sky.server.verify(
                1,
                getRequestedFor(urlPathEqualTo(Sky.GRID))
                        .withHeader("If-Modified-Since", equalTo(stamp)));
    }

    @Test
    void twoPropertiesInOneCellShareItsPointAndItsRequest() {
        var nws = new NationalWeatherService(sky.client());
        sky.on("/points/42.105,-84.195", Sky.json(Sky.fixture("nws-point.json")));
        var here = Sky.series(nws.pull(Sky.FARM, NOW));
        var there = Sky.series(nws.pull(new GeoPoint(42.105, -84.195), NOW));
        assertThat(there.point()).isEqualTo(here.point());
        assertThat(sky.asked(Sky.GRID)).isEqualTo(1);
    }

    @Test
    void everyAnswerComesBackAsReceivedWithItsTimeOfIssue() {
        var pull = sky.pull(NOW);
        assertThat(pull.answers()).hasSize(2);
        var raw = pull.answers().get(1);
        assertThat(raw.status()).isEqualTo(200);
        assertThat(new String(raw.body(), java.nio.charset.StandardCharsets.UTF_8))
                .isEqualTo(Sky.grid());
        assertThat(raw.issuedAt()).contains(Instant.parse("2026-07-15T09:12:00Z"));
        assertThat(raw.headers()).containsEntry("content-type", "application/geo+json");
    }

    private static double total(ForecastSeries series) {
        return series.rain().amounts().stream()
                .mapToDouble(RainAmount::amountMm)
                .sum();
    }
}
