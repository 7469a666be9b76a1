package rainward.feed.wire;

import java.time.Duration;
import java.util.Optional;
import okhttp3.HttpUrl;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Service;

/**
 * One question to a service.
 *
 * @param service whom
 * @param url the address, key included
 * @param body what is posted, if it is not a plain GET
 * @param wish how the answer should look
 */
public record Ask(Service service, HttpUrl url, Optional<Posted> body, Wish wish) {

    public static Ask get(Service service, HttpUrl url, String accept) {
        return new Ask(
                service,
                url,
                Optional.empty(),
                new Wish(
                        accept,
                        Optional.empty(),
                        service.manners().leastAge(),
                        Duration.ofHours(24)));
    }

    public static Ask post(Service service, HttpUrl url, Posted body) {
        Wish wish = new Wish(
                "application/json",
                Optional.empty(),
                service.manners().leastAge(),
                Duration.ofHours(24));
        return new Ask(service, url, Optional.of(body), wish);
    }

    /** The same, with a second form to ask for where the first gives an unreadable answer. */
    public Ask orElse(String otherAccept) {
        return with(
                new Wish(wish.accept, Optional.of(otherAccept), wish.leastAge, wish.longestAge));
    }

    /** The same, asked for in the given form only. */
    public Ask accepting(String accept) {
        return with(new Wish(accept, Optional.empty(), wish.leastAge, wish.longestAge));
    }

    /** The same, with bounds on how long an answer counts as fresh. */
    public Ask freshFor(Duration least, Duration longest) {
        return with(new Wish(wish.accept, wish.otherAccept, least, longest));
    }

    /** The same, asked over the wire even if the kept copy is fresh, and without condition. */
    public Ask anew() {
        return freshFor(Duration.ofSeconds(-1), Duration.ofSeconds(-1));
    }

    boolean unconditional() {
        return wish.longestAge.isNegative();
    }

    /** What the answer is kept and recorded under. */
    String address() {
        String plain = Addresses.withoutKey(url);
        return body.map(b -> plain + "#" + Sha256.of(b.text()).substring(0, 16)).orElse(plain);
    }

    /** What is left alone in trouble: one service at one host. */
    String host() {
        return service.code() + "@" + Addresses.hostOf(url);
    }

    private Ask with(Wish other) {
        return new Ask(service, url, body, other);
    }

    /**
     * A body to post.
     *
     * @param mediaType its type
     * @param text its content
     */
    public record Posted(String mediaType, String text) {}

    /**
     * How the answer should look.
     *
     * @param accept the Accept header, always sent: without it edges serve days-old copies
     * @param otherAccept asked for once where the first form cannot be read
     * @param leastAge an answer younger than this is not asked for again
     * @param longestAge an answer older than this is asked for again, whatever its headers say
     */
    record Wish(
            String accept, Optional<String> otherAccept, Duration leastAge, Duration longestAge) {}
}
