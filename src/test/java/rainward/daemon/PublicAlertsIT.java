package rainward.daemon;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.any;
import static com.github.tomakehurst.wiremock.client.WireMock.anyUrl;
import static com.github.tomakehurst.wiremock.client.WireMock.get;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.daemon.demo.InventedWeather;
import rainward.feed.Sky;

/**
 * What public alerts of the dangers that matter do to the demo's Monday, from the service's answer
 * to the order, its reasons and the brief. Monday is 05:00 in Detroit, work begins at 06:30.
 */
class PublicAlertsIT {

    private static final Instant END = Instant.parse("2026-07-13T18:00:00Z");

    @TempDir
    Path home;

    private final InventedWeather weather = new InventedWeather();
    private final Sky sky = new Sky();
    private Desk desk = new Desk(Path.of(""), Instant.EPOCH);

    @BeforeEach
    void takeFieldsIn() {
        sky.server.stubFor(any(anyUrl())
                .atPriority(9)
                .willReturn(aResponse().proxiedFrom(weather.address().toString())));
        desk = new Desk(home, InventedWeather.MONDAY)
                .withSettings(Desk.crew().replace("[crew]", "traces = 20\n\n[crew]")
                        + """

                        [order]
                        thinking = "0.05 s"

                        [weather.address]
                        nws = "%1$s"
                        acis = "%1$s"
                        met_norway = "%1$s"
                        """.formatted(sky.server.baseUrl()));
        assertThat(desk.type("import", "config/demo-fields.geojson").exitCode()).isZero();
    }

    @AfterEach
    void stop() {
        sky.close();
        weather.close();
    }

    private void issue(String event, String severity, String certainty) {
        sky.server.stubFor(get(urlPathEqualTo("/alerts/active"))
                .atPriority(1)
                .willReturn(Sky.json("""
                        {"features":[{"properties":{"id":"urn:oid:2.49.0.1.840.0.invented.1",
                        "status":"Actual","messageType":"Alert","severity":"%s","certainty":"%s",
                        "urgency":"Expected","event":"%s","areaDesc":"Invented counties",
                        "headline":"%s until 2 PM","instruction":null,"references":[],
                        "sent":"2026-07-13T04:30:00-04:00","onset":"2026-07-13T05:00:00-04:00",
                        "effective":"2026-07-13T04:30:00-04:00",
                        "expires":"2026-07-13T09:00:00-04:00","ends":"2026-07-13T14:00:00-04:00",
                        "parameters":{}}}]}
                        """.formatted(severity, certainty, event, event))));
    }

    /** By common practice, no source: danger to life stops work, a caution is for the crew. */
    @ParameterizedTest(name = "{0}, {1}, {2}")
    @CsvSource({
        "Severe Thunderstorm Warning, Severe, Observed, true",
        "Severe Thunderstorm Watch, Severe, Possible, false",
        "Tornado Warning, Extreme, Observed, true",
        "Flash Flood Warning, Severe, Likely, true",
        "Flood Advisory, Minor, Likely, false",
        "High Wind Warning, Severe, Likely, true",
        "Extreme Heat Warning, Severe, Likely, false",
        "Freeze Warning, Moderate, Likely, false"
    })
    void alertStopsWorkOrIsACaution(
            String event, String severity, String certainty, boolean stops) {
        issue(event, severity, certainty);
        assertThat(desk.type("pull").exitCode()).isZero();
        JsonNode first = desk.type("order", "--json").json().path("items").path(0);
        String field = first.path("field").asText();

        JsonNode why = desk.type("order", "--why", field, "--json").json();

        assertThat(OffsetDateTime.parse(first.path("start").asText())
                        .toInstant()
                        .isBefore(END))
                .as("work starts before the end")
                .isEqualTo(!stops);
        assertThat(why.toString().contains("the public alert \\\"" + event))
                .as(why.toString())
                .isEqualTo(stops);
        String brief = desk.type("brief").out();
        assertThat(brief).contains(event);
    }

    @Test
    void pullNamesTheAlertAtEveryPropertyThatItTouches() {
        issue("Heat Advisory", "Moderate", "Likely");

        Desk.Said said = desk.type("pull");

        assertThat(said.out().split("public alert: Heat Advisory", -1)).hasSize(1 + 6);
    }
}
