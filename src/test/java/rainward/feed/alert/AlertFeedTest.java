package rainward.feed.alert;

import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.getRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static rainward.feed.Sky.NOW;

import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rainward.feed.Sky;
import rainward.weather.alert.PublicAlert;
import rainward.weather.alert.PublicAlert.Severity;

/** Alerts as the US service sends them. */
class AlertFeedTest {

    private static final String PATH = "/alerts/active";

    private final Sky sky = Sky.fair();

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void actualAlertsAreReadTestsPassedByAndBrokenOnesNamed() {
        sky.on(PATH, Sky.json(Sky.fixture("alerts.json")));
        AlertFeed.Poll poll = poll();
        assertThat(poll.alerts().orElseThrow()).hasSize(1);
        PublicAlert alert = poll.alerts().orElseThrow().get(0);
        assertThat(alert.id()).isEqualTo("urn:oid:1.1");
        assertThat(alert.rank().severity()).isEqualTo(Severity.SEVERE);
        assertThat(alert.times().startsAt()).isEqualTo("2026-07-15T18:00:00Z");
        assertThat(alert.times().endsAt())
                .contains(java.time.Instant.parse("2026-07-16T00:00:00Z"));
        assertThat(alert.message().instruction()).isEmpty();
        assertThat(poll.notes())
                .containsExactly(
                        "alerts: 1 entry left out, the first because it has no id, event or time of"
                                + " sending");
        sky.server.verify(
                1,
                getRequestedFor(urlPathEqualTo(PATH))
                        .withQueryParam("point", equalTo("42.1,-84.2")));
    }

    @Test
    void theEndOfTheEventComesBeforeTheExpiryOfTheMessage() {
        String open = Sky.fixture("alerts.json")
                .replace("\"ends\": \"2026-07-15T20:00:00-04:00\"", "\"ends\": null");
        sky.on(PATH, Sky.json(open));
        assertThat(poll().alerts().orElseThrow().get(0).times().endsAt())
                .contains(java.time.Instant.parse("2026-07-15T19:00:00Z"));
    }

    @Test
    void replacedMessagesAreFoundInBothPlaces() {
        sky.on(
                PATH,
                Sky.json(
                        Sky.fixture("alerts.json")
                                .replace(
                                        "\"references\": [],",
                                        "\"references\": [{\"identifier\": \"urn:oid:0.1\"}],"
                                                + " \"parameters\": {\"expiredReferences\":"
                                                + " [\"w@x.example,urn:oid:0.0,2026-07-15T01:00:00-04:00\"]},")));
        assertThat(poll().alerts().orElseThrow().get(0).replaces())
                .containsExactlyInAnyOrder("urn:oid:0.1", "urn:oid:0.0");
    }

    @Test
    void aFeedThatIsDownIsNotAnEmptySky() {
        sky.on(PATH, Sky.page(503));
        AlertFeed.Poll poll = poll();
        assertThat(poll.alerts()).isEmpty();
        assertThat(poll.notes().get(0)).startsWith("alerts: nws is in trouble itself (503");
        assertThat(sky.asked(PATH)).isEqualTo(3);
    }

    @Test
    void featuresThatAreNullAreNoEmptySkyEither() {
        sky.on(PATH, Sky.json("{\"type\":\"FeatureCollection\",\"features\":null}"));
        assertThat(poll().alerts()).isEmpty();
        assertThat(poll().notes())
                .contains("alerts: nws sent a list of alerts without any features");
    }

    @Test
    void troubleWithAlertsDoesNotStopTheForecast() {
        sky.on(PATH, Sky.problem(500, "UnexpectedProblem"));
        for (int i = 0; i < 6; i++) {
            new AlertFeed(sky.client()).pull(Sky.FARM, NOW.plus(Duration.ofMinutes(i)));
        }
        assertThat(sky.outcome().series()).isPresent();
        assertThat(sky.asked(PATH)).isEqualTo(3 + 4);
    }

    private AlertFeed.Poll poll() {
        return new AlertFeed(sky.client()).pull(Sky.FARM, NOW);
    }
}
