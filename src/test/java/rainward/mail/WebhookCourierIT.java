package rainward.mail;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.any;
import static com.github.tomakehurst.wiremock.client.WireMock.anyUrl;
import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.postRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlEqualTo;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import com.github.tomakehurst.wiremock.core.WireMockConfiguration;
import com.github.tomakehurst.wiremock.http.Fault;
import com.github.tomakehurst.wiremock.junit5.WireMockExtension;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.brief.post.Outgoing;
import rainward.brief.post.Recipient;

/** Calls to a real web server in this JVM. */
class WebhookCourierIT {

    @RegisterExtension
    static final WireMockExtension SERVER = WireMockExtension.newInstance()
            .options(WireMockConfiguration.options().dynamicPort())
            .build();

    private static final byte[] SECRET = "rake and roll".getBytes(StandardCharsets.UTF_8);

    private static String url() {
        return SERVER.url("/crew");
    }

    private static Outgoing message() {
        Recipient hook = new Recipient(
                "Crew board",
                Recipient.Address.webhook(url()),
                Recipient.Wants.EVERYTHING,
                rainward.farm.UnitSystem.METRIC);
        return new Packing(new MimeLetter(Mails.SENDER, "crew"), Duration.ofHours(24))
                .pack(
                        Mails.letter("brief/2026-07-16", "Thu: Mill 3", "till \"Mill 3\"\n"),
                        hook,
                        Mails.DAWN);
    }

    private static Delivery deliver(ResponseDefinitionBuilder answer) {
        SERVER.stubFor(any(anyUrl()).willReturn(answer));
        return new WebhookCourier(Duration.ofSeconds(2), Map.of(url(), SECRET)).deliver(message());
    }

    @Test
    void theMessageArrivesAsJsonWithItsEvent() throws Exception {
        assertThat(deliver(aResponse().withStatus(204))).isInstanceOf(Delivery.Accepted.class);

        SERVER.verify(postRequestedFor(urlEqualTo("/crew"))
                .withHeader("Content-Type", equalTo("application/json"))
                .withHeader("Rainward-Event", equalTo("brief/2026-07-16")));
        JsonNode body = new ObjectMapper().readTree(message().content());
        assertThat(body.get("event").asText()).isEqualTo("brief/2026-07-16");
        assertThat(body.get("text").asText()).isEqualTo("till \"Mill 3\"\n");
        assertThat(body.get("writtenAt").asText()).isEqualTo("2026-07-16T05:00-04:00");
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    /** RFC 4231, test case 2 (digest from memory). */
    @Test
    void theHmacIsThatOfRfc4231() {
        assertThat(WebhookCourier.hmac(
                        ascii("Jefe"), ascii("what do ya want "), ascii("for nothing?")))
                .isEqualTo("5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843");
    }

    @Test
    void theSignatureIsOverEventAndBody() {
        deliver(aResponse().withStatus(200));

        SERVER.verify(postRequestedFor(urlEqualTo("/crew"))
                .withHeader(
                        "Rainward-Signature",
                        equalTo("sha256="
                                + WebhookCourier.hmac(
                                        SECRET,
                                        ascii("brief/2026-07-16\n"),
                                        message().content()))));
    }

    @ParameterizedTest
    @ValueSource(ints = {500, 502, 503, 408, 425, 429})
    void whatMayPassIsTriedAgain(int status) {
        assertThat(deliver(aResponse().withStatus(status))).isInstanceOf(Delivery.Passing.class);
    }

    @ParameterizedTest
    @ValueSource(ints = {301, 307, 400, 401, 404, 410})
    void whatWillNotChangeIsForGood(int status) {
        assertThat(deliver(aResponse().withStatus(status).withHeader("Location", "/elsewhere")))
                .isInstanceOfSatisfying(
                        Delivery.PermanentRefusal.class,
                        refusal -> assertThat(refusal.code()).isEqualTo(status));
        SERVER.verify(0, postRequestedFor(urlEqualTo("/elsewhere")));
    }

    @Test
    void theServersOwnWaitIsKept() {
        Delivery delivery = deliver(aResponse().withStatus(503).withHeader("Retry-After", "900"));

        assertThat(delivery)
                .isEqualTo(new Delivery.Passing(
                        "503 Service Unavailable", Optional.of(Duration.ofSeconds(900))));
    }

    @Test
    void aServerThatHangsUpOrIsSlowPasses() {
        assertThat(deliver(aResponse().withFault(Fault.CONNECTION_RESET_BY_PEER)))
                .isInstanceOf(Delivery.Passing.class);
        assertThat(deliver(aResponse().withFixedDelay(4_000))).isInstanceOf(Delivery.Passing.class);
    }
}
