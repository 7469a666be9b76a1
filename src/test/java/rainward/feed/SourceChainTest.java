package rainward.feed;

import static org.assertj.core.api.Assertions.assertThat;
import static rainward.feed.Sky.GRID;
import static rainward.feed.Sky.NOW;
import static rainward.feed.point.MetNorwayTest.assertFailed;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.feed.nws.NationalWeatherService;
import rainward.feed.point.MetNorway;
import rainward.feed.point.OpenMeteo;
import rainward.weather.source.Pull;
import rainward.weather.source.PullOutcome.Fetched;
import rainward.weather.source.PullOutcome.Kind;
import rainward.weather.source.SourceStatus.State;

/** Sources in order: fail over within one pull, come back, and say since when. */
class SourceChainTest {

    private static final String MET = "/weatherapi/locationforecast/2.0/complete";

    private final Sky sky = Sky.fair();
    private final SourceWatch watch = new SourceWatch();

    @BeforeEach
    void second() {
        sky.on(MET, Sky.json(Sky.fixture("met-complete.json")));
    }

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void thePreferredSourceIsEnough() {
        assertThat(source(pull(NOW))).isEqualTo("nws");
        assertThat(sky.asked(MET)).isZero();
        assertThat(state("nws")).isEqualTo(State.OK);
        assertThat(watch.of("met-norway")).isEmpty();
    }

    @Test
    void theNextOneStandsInWithinTheSamePullAndSaysForWhom() {
        sky.on(GRID, Sky.problem(500, "UnexpectedProblem"));
        Pull pull = pull(NOW);
        assertThat(source(pull)).isEqualTo("met-norway");
        assertThat(Sky.series(pull).warnings().get(0)).startsWith("nws is in trouble itself (500");
        assertThat(pull.answers()).hasSize(1 + 3 + 1);
    }

    @Test
    void statusKeepsItsSinceUntilItChangesAndThePreferredComesBack() {
        pull(NOW);
        sky.on(GRID, Sky.problem(503, "ForecastGridExpired"));
        for (int hour = 2; hour < 6; hour++) {
            assertThat(source(pull(hours(hour)))).isEqualTo("met-norway");
        }
        assertThat(state("nws")).isEqualTo(State.DOWN);
        assertThat(watch.of("nws").orElseThrow().since()).isEqualTo(hours(2));
        assertThat(watch.of("nws").orElseThrow().words()).contains("ForecastGridExpired");
        sky.on(GRID, Sky.json(Sky.grid()));
        assertThat(source(pull(hours(7)))).isEqualTo("nws");
        assertThat(state("nws")).isEqualTo(State.OK);
        assertThat(watch.of("nws").orElseThrow().since()).isEqualTo(hours(7));
    }

    @Test
    void aForecastWithoutRainIsPassedOverForOneWithRain() {
        sky.on(
                GRID,
                Sky.json(Sky.grid()
                        .replace("\"quantitativePrecipitation\"", "\"q\"")
                        .replace("\"probabilityOfPrecipitation\"", "\"p\"")));
        Pull pull = pull(NOW);
        assertThat(source(pull)).isEqualTo("met-norway");
        assertThat(Sky.series(pull).warnings()).contains("nws has no readable rain");
        sky.on(MET, Sky.problem(500, "Down"));
        assertThat(source(pull(hours(3)))).as("kept, and it knows rain").isEqualTo("met-norway");
        sky.copies.clear();
        assertThat(source(pull(hours(4)))).as("better than nothing").isEqualTo("nws");
    }

    @Test
    void anOldForecastIsPassedOverForANewOne() {
        sky.on(GRID, Sky.json(Sky.grid().replace("2026-07-15T09:12", "2026-07-13T09:12")));
        Pull pull = pull(NOW);
        assertThat(source(pull)).isEqualTo("met-norway");
        assertThat(Sky.series(pull).warnings())
                .contains("nws has only an old forecast, issued at 2026-07-13T09:12:00Z");
        assertThat(state("nws")).isEqualTo(State.STALE);
    }

    @Test
    void withAllOfThemDownTheNewestKeptForecastIsUsed() {
        pull(NOW);
        sky.on(GRID, Sky.problem(500, "UnexpectedProblem"));
        sky.on(MET, Sky.problem(502, "BadGateway"));
        Pull pull = pull(hours(4));
        assertFailed(pull.outcome(), Kind.SERVER_FAULT, "; met-norway is in trouble itself (502");
        assertThat(Sky.series(pull).stamp().issuedAt()).isEqualTo("2026-07-15T09:12:00Z");
        assertThat(Sky.series(pull).hourly().start()).isEqualTo("2026-07-15T14:00:00Z");
    }

    @Test
    void aPlaceThatASourceDoesNotCoverSaysNothingAboutTheSource() {
        sky.on("/points/51.5,-0.1", Sky.problem(404, "InvalidPoint"));
        pull(NOW);
        Pull pull = chain().pull(new GeoPoint(51.5, -0.1), NOW);
        assertThat(source(pull)).isEqualTo("met-norway");
        assertThat(state("nws")).isEqualTo(State.OK);
    }

    @Test
    void theWorstOfARoundCounts() {
        sky.on("/points/43,-84", Sky.problem(500, "UnexpectedProblem"));
        chain().pull(new GeoPoint(43, -84), NOW);
        pull(NOW);
        assertThat(state("nws")).isEqualTo(State.DOWN);
        pull(NOW.plusSeconds(60));
        assertThat(state("nws")).isEqualTo(State.OK);
    }

    @Test
    void whatIsSwitchedOffIsSaidToBe() {
        var off = new SourceChain(List.of(new OpenMeteo(sky.client())), watch);
        assertFailed(off.pull(Sky.FARM, NOW).outcome(), Kind.DISABLED, "switched off");
        assertThat(state("open-meteo")).isEqualTo(State.DISABLED);
    }

    @Test
    void aForecastOfJustUnderTwelveHoursIsNotLate() {
        sky.on(GRID, Sky.json(Sky.grid().replace("2026-07-15T09:12", "2026-07-14T22:21")));
        assertThat(pull(NOW).outcome()).isInstanceOf(Fetched.class);
        assertThat(state("nws")).isEqualTo(State.OK);
    }

    @Test
    void aForecastPastTwelveHoursIsLate() {
        sky.on(GRID, Sky.json(Sky.grid().replace("2026-07-15T09:12", "2026-07-14T22:19")));
        assertThat(pull(NOW).outcome()).isInstanceOf(Fetched.class);
        assertThat(state("nws")).isEqualTo(State.LATE);
    }

    @Test
    void statesOutliveARestart() {
        sky.on(GRID, Sky.problem(500, "UnexpectedProblem"));
        pull(NOW);
        var after = new SourceWatch();
        after.resume(watch.all());
        new SourceChain(List.of(new NationalWeatherService(sky.client())), after)
                .pull(Sky.FARM, hours(1));
        assertThat(after.of("nws").orElseThrow().since()).isEqualTo(NOW);
    }

    private SourceChain chain() {
        return new SourceChain(
                List.of(new NationalWeatherService(sky.client()), new MetNorway(sky.client())),
                watch);
    }

    private Pull pull(Instant asOf) {
        return chain().pull(Sky.FARM, asOf);
    }

    private State state(String source) {
        return watch.of(source).orElseThrow().state();
    }

    private static String source(Pull pull) {
        return Sky.series(pull).stamp().source();
    }

    private static Instant hours(int hours) {
        return NOW.plus(Duration.ofHours(hours));
    }
}
