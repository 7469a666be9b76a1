package rainward.mail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import okhttp3.HttpUrl;
import okhttp3.MediaType;
import okhttp3.OkHttpClient;
import okhttp3.Request;
import okhttp3.RequestBody;
import okhttp3.Response;
import rainward.brief.post.Outgoing;

/**
 * Calls a web address with a message as JSON. Where a secret is set, {@value #SIGNATURE} carries
 * {@code sha256=} and the HMAC-SHA256 (RFC 2104) of the event, a line feed and the body, in
 * hexadecimal. {@value #EVENT} is the same on every try, so that the other side can tell a second
 * copy.
 */
public final class WebhookCourier implements Courier {

    static final String EVENT = "Rainward-Event";

    static final String SIGNATURE = "Rainward-Signature";

    private static final MediaType JSON = MediaType.get("application/json");

    /** Answers that pass although they are 4xx: too slow, too early, too many (RFC 9110, 6585). */
    private static final Set<Integer> PASSING = Set.of(408, 425, 429);

    private final OkHttpClient client;
    private final Map<String, byte[]> secrets;

    /**
     * Calls with secrets.
     *
     * @param timeout of a whole call
     * @param secrets by web address
     */
    public WebhookCourier(Duration timeout, Map<String, byte[]> secrets) {
        this.client = new OkHttpClient.Builder()
                .callTimeout(timeout)
                // A signed message goes where the settings say and nowhere else.
                .followRedirects(false)
                .build();
        this.secrets = Map.copyOf(secrets);
    }

    @Override
    public Delivery deliver(Outgoing message) {
        HttpUrl url = HttpUrl.parse(message.key().recipient());
        if (url == null) {
            return new Delivery.PermanentRefusal(
                    0, message.key().recipient() + " is no web address");
        }
        Request request = request(url, message);
        String whom = url.host() + ":" + url.port();
        try (Response response = client.newCall(request).execute()) {
            return outcome(response);
        } catch (IOException e) {
            return Delivery.Passing.because("cannot reach " + whom + ": " + e.getMessage());
        } catch (RuntimeException e) {
            // OkHttp lets some malformed replies out as unchecked exceptions.
            return Delivery.Passing.because(whom + " sent a reply that breaks HTTP");
        }
    }

    private Request request(HttpUrl url, Outgoing message) {
        String event = message.key().event();
        Request.Builder request = new Request.Builder()
                .url(url)
                .header(EVENT, ascii(event))
                .post(RequestBody.create(message.content(), JSON));
        Optional.ofNullable(secrets.get(message.key().recipient()))
                .ifPresent(secret -> request.header(
                        SIGNATURE, "sha256=" + signature(secret, event, message.content())));
        return request.build();
    }

    private static String ascii(String event) {
        return event.replaceAll("[^\\x21-\\x7E]", "_");
    }

    private static String signature(byte[] secret, String event, byte[] body) {
        return hmac(secret, (ascii(event) + '\n').getBytes(StandardCharsets.US_ASCII), body);
    }

    /** HMAC-SHA256 over the parts one after the other, in hexadecimal. */
    static String hmac(byte[] secret, byte[] first, byte[] second) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(secret, "HmacSHA256"));
            mac.update(first);
            return HexFormat.of().formatHex(mac.doFinal(second));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has HmacSHA256", e);
        }
    }

    private static Delivery outcome(Response response) {
        int code = response.code();
        String said = (code + " " + response.message()).strip();
        if (response.isSuccessful()) {
            return new Delivery.Accepted(said);
        }
        return code >= 500 || PASSING.contains(code)
                ? new Delivery.Passing(said, retryAfter(response))
                : new Delivery.PermanentRefusal(code, said);
    }

    /** RFC 9110 10.2.3, the form in seconds; a date is left to our own schedule. */
    private static Optional<Duration> retryAfter(Response response) {
        return Optional.ofNullable(response.header("Retry-After"))
                .filter(text -> text.matches("\\d{1,6}"))
                .map(text -> Duration.ofSeconds(Long.parseLong(text)));
    }
}
