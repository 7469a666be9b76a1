package rainward.board.door;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import jakarta.servlet.http.HttpSession;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Stands before every page: host, headers, visitor, form token. Nothing is stored for whom nobody
 * knows: the token of their forms is a cookie that the form must repeat. Whoever came in by PIN has
 * a session, and the token lies in it.
 */
public final class Guard {

    /** Most bytes that a request may bring: a long note with its form is a few thousand. */
    public static final int MOST_BODY_BYTES = 64 * 1024;

    /** Where the form token of a request is looked for beside the form itself. */
    public static final String TOKEN_HEADER = "X-Rainward-Token";

    private static final String PERSON = "person";
    private static final String ENTERED = "entered";
    private static final int LONGEST_NAME = 80;
    private static final String TOKEN = "token";
    private static final String VISITOR = "visitor";

    /** Cookies of those who have no session. */
    private static final String FORM_COOKIE = "rainward-form";

    private static final String NAME_COOKIE = "rainward-name";

    /** A year; a name that was chosen on a machine of the farm is not chosen every day. [s] */
    private static final int LONG_S = 365 * 24 * 3600;

    private final HostNames hosts;
    private final Optional<Keyring> keyring;
    private final boolean secure;
    private final String policy;
    private final SecureRandom random = new SecureRandom();

    /**
     * A guard.
     *
     * @param hosts names that are answered to
     * @param keyring who may come in; empty where only this machine can
     * @param secure true where cookies travel over TLS alone
     * @param tiles server of map tiles that pictures may come from
     */
    public Guard(
            HostNames hosts, Optional<Keyring> keyring, boolean secure, Optional<String> tiles) {
        this.hosts = hosts;
        this.keyring = keyring;
        this.secure = secure;
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
        if (!readable(ctx.req().getRequestURI())) {
            throw new TurnedAway(
                    HttpStatus.BAD_REQUEST, "That address is broken: a % stands for nothing.");
        }
        if (ctx.contentLength() > MOST_BODY_BYTES) {
            throw new TurnedAway(
                    HttpStatus.CONTENT_TOO_LARGE,
                    "That is more than " + MOST_BODY_BYTES / 1024 + " KB at once.");
        }
        if (!ctx.method().equals(HandlerType.GET) && !ctx.method().equals(HandlerType.HEAD)) {
            sameSite(ctx);
        }
    }

    /** The server checks the signs behind a % of an address, but not those behind a semicolon. */
    private static boolean readable(String address) {
        try {
            URLDecoder.decode(address, StandardCharsets.UTF_8);
            return true;
        } catch (IllegalArgumentException broken) {
            return false;
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

    /**
     * Browsers say where a form comes from; one of another page is not taken, be it of another port
     * of this machine.
     */
    private static void sameSite(Context ctx) {
        String host = Optional.ofNullable(ctx.header("Host")).orElse("");
        String from = ctx.header("Origin");
        boolean other = from != null && !from.replaceFirst("^https?://", "").equalsIgnoreCase(host);
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
                ? Optional.of(new Visitor(chosenName(ctx), Role.LEAD, false))
                : known(ctx, keyring.get());
        visitor.ifPresent(v -> ctx.attribute(VISITOR, v));
        return visitor;
    }

    /** A PIN that was changed since shuts the sessions that the old one opened. */
    private static Optional<Visitor> known(Context ctx, Keyring keys) {
        Optional<HttpSession> session = session(ctx);
        String entered = session.map(s -> (String) s.getAttribute(ENTERED)).orElse("");
        return session.map(s -> (String) s.getAttribute(PERSON))
                .flatMap(keys::named)
                .filter(person -> same(person.pinHash(), entered))
                .map(person -> new Visitor(person.name(), person.role(), true));
    }

    /** The person whose calendar is at an address; empty where that address was never given. */
    public Optional<Person> ofCalendar(String key) {
        return keyring.stream()
                .flatMap(keys -> keys.people().stream())
                .filter(person -> same(person.calendarKey(), key))
                .findFirst();
    }

    /** Where a calendar program finds the work of a visitor. */
    public String calendarPath(Visitor visitor) {
        return keyring.flatMap(keys -> keys.named(visitor.name()))
                .map(person -> "/calendar/" + person.calendarKey() + ".ics")
                .orElseGet(() -> "/calendar.ics?who="
                        + URLEncoder.encode(visitor.name(), StandardCharsets.UTF_8));
    }

    private static Optional<HttpSession> session(Context ctx) {
        return Optional.ofNullable(ctx.req().getSession(false));
    }

    private static String chosenName(Context ctx) {
        return Optional.ofNullable(ctx.cookie(NAME_COOKIE))
                .flatMap(Guard::decoded)
                .orElse("office");
    }

    private static Optional<String> decoded(String text) {
        try {
            return Optional.of(
                            new String(Base64.getUrlDecoder().decode(text), StandardCharsets.UTF_8))
                    .filter(name -> !name.isBlank() && name.length() <= LONGEST_NAME);
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** Keeps the name that somebody on this machine chose. */
    public void choose(Context ctx, String name) {
        cookie(
                ctx,
                NAME_COOKIE,
                Base64.getUrlEncoder()
                        .withoutPadding()
                        .encodeToString(name.getBytes(StandardCharsets.UTF_8)),
                LONG_S);
    }

    private void cookie(Context ctx, String name, String value, int seconds) {
        ctx.cookie(new Cookie(name, value, "/", seconds, secure, true, null, SameSite.STRICT));
    }

    /** Opens a session for a person; a new one, so that none is foisted. */
    public void enter(Context ctx, Person person) {
        session(ctx).ifPresent(HttpSession::invalidate);
        HttpSession fresh = ctx.req().getSession(true);
        fresh.setAttribute(TOKEN, drawn());
        fresh.setAttribute(PERSON, person.name());
        fresh.setAttribute(ENTERED, person.pinHash());
    }

    public void leave(Context ctx) {
        session(ctx).ifPresent(HttpSession::invalidate);
    }

    /** The token that forms of this visitor carry. */
    public String token(Context ctx) {
        String drawnBefore = ctx.attribute(TOKEN);
        String before = session(ctx)
                .map(s -> (String) s.getAttribute(TOKEN))
                .or(() -> Optional.ofNullable(drawnBefore))
                .or(() -> Optional.ofNullable(ctx.cookie(FORM_COOKIE))
                        .filter(text -> text.matches("[0-9a-f]{32}")))
                .orElse("");
        if (!before.isEmpty()) {
            return before;
        }
        String token = drawn();
        ctx.attribute(TOKEN, token);
        cookie(ctx, FORM_COOKIE, token, -1);
        return token;
    }

    private String drawn() {
        byte[] bytes = new byte[16];
        random.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
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
