package rainward.feed;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static org.assertj.core.api.Assertions.assertThat;

import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import com.github.tomakehurst.wiremock.http.Fault;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.feed.nws.NationalWeatherService;
import rainward.feed.point.MetNorway;
import rainward.feed.terms.Addresses;
import rainward.weather.source.Pull;
import rainward.weather.source.PullOutcome.Failed;

/** Seven days on a made-up clock, six properties in three cells, faults drawn by the hour. */
class WeekOfFaultsTest {

    private static final Instant START = Instant.parse("2026-07-15T10:20:00Z");
    private static final int HOURS = 7 * 24;
    private static final String MET = "/weatherapi/locationforecast/2.0/complete";
    private static final Pattern TIME =
            Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(?:\\+00:00|Z)");

    /** Places of properties and the row of their cell; two share each cell. */
    private static final List<GeoPoint> FARMS = List.of(
            new GeoPoint(42.10, -84.20),
            new GeoPoint(42.11, -84.21),
            new GeoPoint(42.30, -84.20),
            new GeoPoint(42.31, -84.21),
            new GeoPoint(42.50, -84.20),
            new GeoPoint(42.51, -84.21));

    private final Sky sky = new Sky();
    private final SourceWatch watch = new SourceWatch();
    private final SplittableRandom chance = new SplittableRandom(20260715);

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void eachHourHasAForecastNothingGoesBackAndNobodyIsHammered() {
        Map<String, Instant> newest = new HashMap<>();
        Map<String, Integer> madeFrom = new HashMap<>();
        int without = 0;
        int asked = 0;
        for (int hour = 0; hour < HOURS; hour++) {
            Instant now = START.plus(Duration.ofHours(hour));
            sky.server.resetAll();
            weather(now);
            if (chance.nextInt(20) == 0) {
                sky.restart();
            }
            for (GeoPoint farm : FARMS) {
                Pull pull = chain().pull(farm, now);
                without += pull.outcome().series().isEmpty() ? 1 : 0;
                pull.outcome().series().ifPresent(s -> {
                    String key = s.stamp().source() + farm;
                    Instant last = newest.put(key, s.stamp().issuedAt());
                    assertThat(last == null || !s.stamp().issuedAt().isBefore(last))
                            .as(key + " at " + now)
                            .isTrue();
                    assertThat(s.hourly().start()).isBeforeOrEqualTo(now);
                });
                String from = pull.outcome() instanceof Failed
                        ? "kept"
                        : Sky.series(pull).stamp().source();
                madeFrom.merge(from, 1, Integer::sum);
            }
            // Three cells of two sources, three tries each and one other form; points now and then.
            assertThat(sky.asked()).isLessThanOrEqualTo(3 * 4 + 3 + 6 * 3);
            asked += sky.asked();
        }
        assertThat(without).isZero();
        assertThat(madeFrom.keySet()).contains("nws", "met-norway", "kept");
        assertThat(madeFrom.get("nws")).isGreaterThan(HOURS * FARMS.size() / 3);
        // One point a day for each property, one cell an hour at best: 6 x 7 + 3 x 168 and retries.
        assertThat(asked).isLessThan(2_500);
        assertThat(watch.all()).hasSize(2);
    }

    private SourceChain chain() {
        return new SourceChain(
                List.of(new NationalWeatherService(sky.client()), new MetNorway(sky.client())),
                watch);
    }

    private void weather(Instant now) {
        for (int cell = 0; cell < 3; cell++) {
            String point = Sky.fixture("nws-point.json").replace("41", Integer.toString(41 + cell));
            for (int i = 0; i < 2; i++) {
                GeoPoint farm = FARMS.get(2 * cell + i);
                ResponseDefinitionBuilder found =
                        Sky.json(point).withHeader("Cache-Control", "max-age=86400");
                sky.on("/points/" + Addresses.latLon(farm), maybe(found, point));
            }
            String grid = shifted(Sky.grid(), Duration.between(Sky.NOW, now));
            String old = shifted(Sky.grid(), Duration.between(Sky.NOW, now).minusHours(40));
            sky.on(
                    "/gridpoints/MIX/" + (41 + cell) + ",27",
                    chance.nextInt(12) == 0
                            ? Sky.json(old)
                            : maybe(
                                    Sky.json(grid).withHeader("Cache-Control", "max-age=3000"),
                                    grid));
        }
        String met = shifted(Sky.fixture("met-complete.json"), Duration.between(Sky.NOW, now));
        sky.on(MET, hour(now) == 0 ? Sky.json(met) : maybe(Sky.json(met), met));
    }

    private static long hour(Instant now) {
        return Duration.between(START, now).toHours();
    }

    /** Now and then a fault in place of the answer. */
    private ResponseDefinitionBuilder maybe(ResponseDefinitionBuilder good, String body) {
        List<ResponseDefinitionBuilder> faults = new ArrayList<>();
        faults.add(Sky.problem(500, "UnexpectedProblem"));
        faults.add(Sky.problem(503, "ForecastGridExpired"));
        faults.add(Sky.page(503));
        faults.add(Sky.page(200));
        faults.add(Sky.problem(429, "RateLimit").withHeader("Retry-After", "99999999999"));
        faults.add(Sky.problem(404, "InvalidGridpoint"));
        faults.add(Sky.json(body.substring(0, body.length() / 2)));
        faults.add(Sky.json(""));
        faults.add(aResponse().withFault(Fault.EMPTY_RESPONSE));
        faults.add(aResponse().withFault(Fault.CONNECTION_RESET_BY_PEER));
        // A wait of a day would silence a source for the rest of the week: seldom.
        int drawn = chance.nextInt(4 * faults.size());
        boolean rare = drawn == 4 && chance.nextInt(30) > 0;
        return drawn < faults.size() && !rare ? faults.get(drawn) : good;
    }

    private static String shifted(String body, Duration by) {
        Duration hours = Duration.ofHours(by.toHours());
        return TIME.matcher(body)
                .replaceAll(m -> Instant.parse(m.group().replace("+00:00", "Z"))
                        .plus(hours)
                        .toString());
    }
}
