package rainward.feed.wire;

import static com.github.tomakehurst.wiremock.client.WireMock.anyRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.anyUrl;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.util.List;
import java.util.Optional;
import okhttp3.OkHttpClient;
import okhttp3.Request;
import okhttp3.Response;
import org.junit.jupiter.api.Test;
import rainward.feed.Sky;
import rainward.feed.terms.Gateway;

/** An office behind a proxy. */
class ConnectionsTest {

    private static OkHttpClient through(Sky proxy) {
        return Connections.through(new Gateway(
                Optional.of(InetSocketAddress.createUnresolved("127.0.0.1", proxy.server.port())),
                List.of()));
    }

    private static int status(OkHttpClient client, String url) throws IOException {
        try (Response response =
                client.newCall(new Request.Builder().url(url).build()).execute()) {
            return response.code();
        }
    }

    @Test
    void farServersAreAskedThroughTheProxyWhichLooksUpTheirNames() throws IOException {
        try (Sky proxy = Sky.fair()) {
            int status = status(through(proxy), "http://far.invalid" + Sky.GRID);

            assertThat(status).isEqualTo(200);
            assertThat(proxy.server.findAll(anyRequestedFor(anyUrl())))
                    .singleElement()
                    .satisfies(
                            asked -> assertThat(asked.getHeader("Host")).isEqualTo("far.invalid"));
        }
    }

    @Test
    void thisMachineIsAskedStraight() throws IOException {
        try (Sky proxy = Sky.fair();
                Sky here = Sky.fair()) {
            assertThat(status(through(proxy), here.server.baseUrl() + Sky.GRID)).isEqualTo(200);
            assertThat(proxy.asked()).isZero();
        }
    }
}
