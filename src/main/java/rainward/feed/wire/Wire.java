package rainward.feed.wire;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.net.UnknownHostException;
import java.time.Instant;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import javax.net.ssl.SSLException;
import okhttp3.Headers;
import okhttp3.HttpUrl;
import okhttp3.Interceptor;
import okhttp3.MediaType;
import okhttp3.OkHttpClient;
import okhttp3.Request;
import okhttp3.RequestBody;
import okhttp3.Response;
import okio.BufferedSource;
import rainward.feed.terms.FeedSettings;
import rainward.feed.wire.Answer.Why;
import rainward.weather.source.PullOutcome.Kind;

/**
 * One request over the wire: few at once, bounded in time and size, redirects only within the host
 * that was asked. What goes wrong comes back as words.
 */
public final class Wire {

    private static final int MOST_REDIRECTS = 3;
    private static final long ERROR_CAP_BYTES = 65_536;

    private final OkHttpClient client;
    private final Semaphore inFlight;
    private final FeedSettings settings;

    Wire(OkHttpClient base, FeedSettings settings) {
        FeedSettings.Pace pace = settings.pace();
        this.settings = settings;
        this.inFlight = new Semaphore(pace.inFlight(), true);
        this.client = base.newBuilder()
                .connectTimeout(pace.connect())
                .readTimeout(pace.read())
                .callTimeout(pace.call())
                .followRedirects(false)
                .followSslRedirects(false)
                .cache(null)
                .addNetworkInterceptor(Wire::guardRetryAfter)
                .build();
    }

    /**
     * A reply as received, or why there is none.
     *
     * @param status HTTP status
     * @param headers by lower-case name
     * @param body decoded bytes
     */
    public record Reply(int status, Map<String, String> headers, byte[] body) {

        String header(String name) {
            return headers.getOrDefault(name, "");
        }
    }

    /** Sends a request; throws what went wrong as words. */
    Reply send(Ask ask, String accept, Map<String, String> conditions) throws Broken {
        inFlight.acquireUninterruptibly();
        try {
            return follow(ask, accept, conditions);
        } catch (IOException e) {
            throw new Broken(wordsFor(e, ask));
        } catch (RuntimeException e) {
            // OkHttp lets some malformed headers out as unchecked exceptions.
            throw new Broken(Why.of(Kind.UNREACHABLE, "sent a reply that breaks HTTP"));
        } finally {
            inFlight.release();
        }
    }

    private Reply follow(Ask ask, String accept, Map<String, String> conditions)
            throws IOException, Broken {
        HttpUrl url = ask.url();
        for (int hop = 0; hop <= MOST_REDIRECTS; hop++) {
            try (Response response =
                    client.newCall(request(ask, url, accept, conditions)).execute()) {
                Optional<HttpUrl> next = redirect(response, ask);
                if (next.isEmpty()) {
                    return reply(response, ask);
                }
                url = next.get();
            }
        }
        throw new Broken(Why.of(Kind.UNREADABLE, "sends us in circles (redirects)"));
    }

    private Request request(Ask ask, HttpUrl url, String accept, Map<String, String> conditions) {
        Request.Builder request = new Request.Builder()
                .url(url)
                .header("User-Agent", settings.identity().userAgent())
                .header("Accept", accept);
        conditions.forEach(request::header);
        ask.body()
                .ifPresent(b ->
                        request.post(RequestBody.create(b.text(), MediaType.get(b.mediaType()))));
        return request.build();
    }

    private static Optional<HttpUrl> redirect(Response response, Ask ask) throws Broken {
        if (response.code() < 301 || response.code() > 308 || response.code() == 304) {
            return Optional.empty();
        }
        String location = response.header("Location", "");
        HttpUrl next = response.request().url().resolve(String.valueOf(location));
        if (next == null) {
            throw new Broken(Why.of(Kind.UNREADABLE, "redirects without saying where to"));
        }
        if (!next.host().equals(ask.url().host())
                || !next.scheme().equals(ask.url().scheme())
                || next.port() != ask.url().port()) {
            throw new Broken(Why.of(
                    Kind.UNREADABLE,
                    "redirects to " + next.scheme() + "://" + next.host()
                            + ", which is not the host that was asked"));
        }
        return Optional.of(next);
    }

    private static Reply reply(Response response, Ask ask) throws IOException, Broken {
        boolean good = response.code() == 200 || response.code() == 203;
        long cap = good ? ask.service().manners().capBytes() : ERROR_CAP_BYTES;
        BufferedSource source = response.body().source();
        boolean tooLong = source.request(cap + 1);
        if (tooLong && good) {
            throw new Broken(Why.of(
                    Kind.UNREADABLE,
                    "sent more than " + cap / 1024 + " KB, which no honest answer is"));
        }
        byte[] body = tooLong ? source.readByteArray(cap) : source.readByteArray();
        return new Reply(response.code(), lowerCase(response.headers()), body);
    }

    private static Map<String, String> lowerCase(Headers headers) {
        Map<String, String> all = new HashMap<>();
        for (int i = 0; i < headers.size(); i++) {
            all.merge(
                    headers.name(i).toLowerCase(Locale.ROOT),
                    headers.value(i),
                    (a, b) -> a + ", " + b);
        }
        return all;
    }

    /**
     * OkHttp repeats on {@code Retry-After: 0} by itself and breaks on values beyond int: both are
     * ours to decide.
     */
    private static Response guardRetryAfter(Interceptor.Chain chain) throws IOException {
        Response response = chain.proceed(chain.request());
        String value = response.header("Retry-After");
        if (value == null) {
            return response;
        }
        long seconds = RetryAfter.parse(
                        value, Instant.ofEpochMilli(response.receivedResponseAtMillis()))
                .map(wait -> Math.max(1, wait.toSeconds()))
                .orElse(-1L);
        Response.Builder guarded = response.newBuilder().removeHeader("Retry-After");
        return seconds < 0
                ? guarded.build()
                : guarded.header("Retry-After", Long.toString(seconds)).build();
    }

    private Why wordsFor(IOException e, Ask ask) {
        if (e instanceof SSLException) {
            return Why.of(
                    Kind.UNTRUSTED,
                    "cannot prove who it is (certificate); a proxy or virus scanner may be in"
                            + " between");
        }
        if (e instanceof UnknownHostException) {
            return Why.of(
                    Kind.UNREACHABLE,
                    "cannot be found: the name " + ask.url().host()
                            + " has no address (no internet, or the name service is down)");
        }
        if (e instanceof java.net.ConnectException) {
            return Why.of(Kind.UNREACHABLE, "takes no connections");
        }
        if (e instanceof InterruptedIOException) {
            return Why.of(
                    Kind.UNREACHABLE,
                    "did not finish its answer within " + settings.pace().call().toSeconds()
                            + " s");
        }
        return Why.of(Kind.UNREACHABLE, "broke the connection off in the middle of the answer");
    }

    /** No reply, and why; never leaves this package. */
    static final class Broken extends Exception {

        private final transient Why why;

        Broken(Why why) {
            super(why.words());
            this.why = why;
        }

        Why why() {
            return why;
        }
    }
}
