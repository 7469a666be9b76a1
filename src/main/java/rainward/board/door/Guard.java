package rainward.board.door;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Stands before every page: host, headers, visitor, form token. */
public final class Guard {

    /** Most bytes that a request may bring: a long note with its form is a few thousand. */
    public static final int MOST_BODY_BYTES = 64 * 1024;

    /** Where the form token of a request is looked for beside the form itself. */
    public static final String TOKEN_HEADER = "X-Rainward-Token";

    static final String PERSON = "person";
    static final String ENTERED = "entered";
    private static final String NAME = "name";
    private static final String TOKEN = "token";
    private static final String VISITOR = "visitor";

    private final HostNames hosts;
    private final Optional<Keyring> keyring;
    private final String policy;
    private final SecureRandom random = new SecureRandom();

    /**
     * A guard.
     *
     * @param hosts names that are answered to
     * @param keyring who may come in; empty where only this machine can
     * @param tiles server of map tiles that pictures may come from
     */
    public Guard(HostNames hosts, Optional<Keyring> keyring, Optional<String> tiles) {
        this.hosts = hosts;
        this.keyring = keyring;
        this.policy = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'"
                + tiles.map(server -> " " + server).orElse("")
                + "; connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none';"
                + " frame-ancestors 'none'";
    }

    /** Turned away, with words for the person. */
    public static final class TurnedAway extends RuntimeException {

        private static final long serialVersionUID = 1;

        private final HttpStatus status;

        public TurnedAway(HttpStatus status, String words) {
            super(words);
            this.status = status;
        }

        public HttpStatus status() {
            return status;
        }
    }

    /** Puts the headers on and turns away what must not come in. */
    public void check(Context ctx) {
        headers(ctx);
        if (!hosts.own(Optional.ofNullable(ctx.header("Host")).orElse(""))) {
            throw new TurnedAway(
                    HttpStatus.MISDIRECTED_REQUEST,
                    "The board does not answer under this name: add it to names under [board].");
        }
        if (ctx.contentLength() > MOST_BODY_BYTES) {
            throw new TurnedAway(
                    HttpStatus.CONTENT_TOO_LARGE,
                    "That is more than " + MOST_BODY_BYTES / 1024 + " KB at once.");
        }
        if (ctx.method() != HandlerType.GET && ctx.method() != HandlerType.HEAD) {
            sameSite(ctx);
        }
    }

    private void headers(Context ctx) {
        ctx.header("Content-Security-Policy", policy)
                .header("X-Content-Type-Options", "nosniff")
                .header("Referrer-Policy", "same-origin")
                .header("Cross-Origin-Opener-Policy", "same-origin")
                .header("Cross-Origin-Resource-Policy", "same-origin")
                .header("Permissions-Policy", "camera=(), microphone=(), geolocation=()")
                .header("Cache-Control", "no-store");
    }

    /** Browsers say where a form comes from; one of another page is not taken. */
    private void sameSite(Context ctx) {
        String from = ctx.header("Origin");
        boolean other = from != null && !hosts.own(from.replaceFirst("^https?://", ""));
        if (other || "cross-site".equals(ctx.header("Sec-Fetch-Site"))) {
            throw new TurnedAway(HttpStatus.FORBIDDEN, "That form came from another page.");
        }
    }

    /** Who it is; empty where somebody must say so first. */
    public Optional<Visitor> visitor(Context ctx) {
        Visitor before = ctx.attribute(VISITOR);
        if (before != null) {
            return Optional.of(before);
        }
        Optional<Visitor> visitor = keyring.isEmpty()
                ? Optional.of(new Visitor(chosenName(ctx), Role.LEAD, token(ctx), false))
                : known(ctx, keyring.get());
        visitor.ifPresent(v -> ctx.attribute(VISITOR, v));
        return visitor;
    }

    /** A PIN that was changed since shuts the sessions that the old one opened. */
    private Optional<Visitor> known(Context ctx, Keyring keys) {
        String name = ctx.sessionAttribute(PERSON);
        String entered = ctx.sessionAttribute(ENTERED);
        return Optional.ofNullable(name)
                .flatMap(keys::named)
                .filter(person -> same(person.pinHash(), entered))
                .map(person -> new Visitor(person.name(), person.role(), token(ctx), true));
    }

    private static String chosenName(Context ctx) {
        return Optional.<String>ofNullable(ctx.sessionAttribute(NAME)).orElse("office");
    }

    /** Keeps the name that somebody on this machine chose. */
    public void choose(Context ctx, String name) {
        ctx.sessionAttribute(NAME, name);
    }

    /** Opens a session for a person; the session's own name changes, so that none is foisted. */
    public void enter(Context ctx, Person person) {
        token(ctx);
        ctx.req().changeSessionId();
        ctx.sessionAttribute(PERSON, person.name());
        ctx.sessionAttribute(ENTERED, person.pinHash());
    }

    public void leave(Context ctx) {
        ctx.req().getSession().invalidate();
    }

    /** The token that forms of this session carry. */
    public String token(Context ctx) {
        String before = ctx.sessionAttribute(TOKEN);
        if (before != null) {
            return before;
        }
        byte[] bytes = new byte[16];
        random.nextBytes(bytes);
        String token = HexFormat.of().formatHex(bytes);
        ctx.sessionAttribute(TOKEN, token);
        return token;
    }

    /** Turns away a form that does not carry the token of its session. */
    public void mustCarryToken(Context ctx) {
        String carried = Optional.ofNullable(ctx.header(TOKEN_HEADER))
                .or(() -> Optional.ofNullable(ctx.formParam(TOKEN)))
                .orElse("");
        if (!same(token(ctx), carried)) {
            throw new TurnedAway(
                    HttpStatus.FORBIDDEN,
                    "This page is older than its session: load it again, then send once more.");
        }
    }

    private static boolean same(String one, @Nullable String other) {
        return other != null
                && MessageDigest.isEqual(
                        one.getBytes(StandardCharsets.UTF_8),
                        other.getBytes(StandardCharsets.UTF_8));
    }
}
