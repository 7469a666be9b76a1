package rainward.board;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.board.api.Api;
import rainward.board.api.Json;
import rainward.board.api.Metrics;
import rainward.board.door.Guard;
import rainward.board.house.House;
import rainward.board.house.Takes;
import rainward.board.live.Live;
import rainward.board.page.Leaf;

/** The board, at work until it is closed. */
public final class Board implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Board.class);
    private static final String BEGAN = "began";

    private final BoardRules rules;
    private final House house;
    private final Guard guard;
    private final Live live;
    private volatile @Nullable Metrics metrics;
    private final Inside inside;
    private final Leaf leaf;
    private final Pages pages;
    private final Javalin server;

    private Board(House house, Takes takes, BoardRules rules) {
        this.rules = rules;
        this.house = house;
        this.guard = new Guard(
                rules.place().hosts(),
                rules.keyring(),
                rules.place().security().kind() != BoardRules.Security.Kind.PLAIN,
                rules.tileServer());
        this.live = new Live(() -> house.standing().turn());
        this.inside = new Inside(house, takes, guard);
        this.leaf = new Leaf();
        this.pages = new Pages(inside, leaf, rules.tiles());
        this.server = Javalin.create(config -> configure(config, new Api(house, takes, guard)));
    }

    /** What everything behind the door works with. */
    record Inside(House house, Takes takes, Guard guard) {}

    /**
     * Opens the board.
     *
     * @throws CannotListen where its place is taken
     */
    public static Board open(House house, Takes takes, BoardRules rules) {
        Board board = new Board(house, takes, rules);
        try {
            board.server.start();
        } catch (RuntimeException e) {
            board.live.close();
            throw new CannotListen(rules.place(), e);
        }
        house.whenChanged(board.live::changed);
        return board;
    }

    /** The place where it should listen is taken, or is not of this machine. */
    public static final class CannotListen extends RuntimeException {

        private static final long serialVersionUID = 1;

        CannotListen(BoardRules.Place place, Throwable cause) {
            super(
                    "The board cannot listen at " + place.listen() + ":" + place.port() + " ("
                            + root(cause) + "): choose another port or address under [board].",
                    cause);
        }

        private static String root(Throwable cause) {
            Throwable deepest = cause;
            while (deepest.getCause() != null) {
                deepest = deepest.getCause();
            }
            return String.valueOf(deepest.getMessage());
        }
    }

    private void configure(JavalinConfig config, Api api) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.http.maxRequestSize = Guard.MOST_BODY_BYTES;
        config.http.prefer405over404 = true;
        new Connection(rules).put(config.jetty);
        config.routes.before(this::before);
        config.routes.after(this::after);
        Assets.routes(config.routes);
        pages.routes(config.routes);
        rules.keyring().ifPresent(keys -> new Door(inside, leaf, keys).routes(config.routes));
        api.routes(config.routes);
        config.routes.get("/metrics", ctx -> {
            mustKnow(ctx);
            ctx.contentType("text/plain; version=0.0.4; charset=utf-8")
                    .result(metrics().text());
        });
        config.routes.get("/live-check", ctx -> {
            mustKnow(ctx);
            ctx.status(HttpStatus.NO_CONTENT);
        });
        // A stream is under way before its handler runs, and nobody can be turned away then.
        config.routes.before("/live", this::mustKnow);
        config.routes.sse("/live", page -> {
            if (guard.visitor(page.ctx()).isPresent()) {
                live.join(page);
            } else {
                page.close();
            }
        });
        config.routes.exception(Guard.TurnedAway.class, this::turnedAway);
        config.routes.exception(Exception.class, this::broken);
        config.routes.error(HttpStatus.NOT_FOUND.getCode(), this::notHere);
    }

    /** Counted from the first time that somebody asks: most farms never do. */
    private synchronized Metrics metrics() {
        Metrics counting = metrics;
        if (counting == null) {
            counting = new Metrics(house, live::listening);
            metrics = counting;
        }
        return counting;
    }

    private void mustKnow(Context ctx) {
        if (guard.visitor(ctx).isEmpty()) {
            throw new Guard.TurnedAway(HttpStatus.UNAUTHORIZED, "Say who you are first: /door");
        }
    }

    private void before(Context ctx) {
        ctx.attribute(BEGAN, System.nanoTime());
        guard.check(ctx);
    }

    private void after(Context ctx) {
        Long began = ctx.attribute(BEGAN);
        if (began != null) {
            Duration took = Duration.ofNanos(System.nanoTime() - began);
            Metrics counting = metrics;
            if (counting != null) {
                counting.answered(ctx.method().name(), ctx.statusCode(), took);
            }
        }
    }

    private static boolean wantsPage(Context ctx) {
        String wants = Optional.ofNullable(ctx.header("Accept")).orElse("");
        return wants.contains("text/html");
    }

    private void turnedAway(Guard.TurnedAway away, Context ctx) {
        boolean stranger =
                away.status() == HttpStatus.UNAUTHORIZED && rules.keyring().isPresent();
        if (stranger && wantsPage(ctx)) {
            String back =
                    java.net.URLEncoder.encode(ctx.path(), java.nio.charset.StandardCharsets.UTF_8);
            ctx.redirect("/door?back=" + back, HttpStatus.SEE_OTHER);
            return;
        }
        ctx.status(away.status());
        say(ctx, "Turned away", String.valueOf(away.getMessage()));
    }

    private void say(Context ctx, String title, String words) {
        if (wantsPage(ctx)) {
            pages.words(ctx, title, words);
        } else {
            ctx.contentType("application/json").result(Json.of(new Takes.Taken("refused", words)));
        }
    }

    /** A bug is logged whole; the visitor is told that it is one, and nothing of its inside. */
    private void broken(Exception bug, Context ctx) {
        LOG.error("{} {} failed", ctx.method(), ctx.path(), bug);
        ctx.status(HttpStatus.INTERNAL_SERVER_ERROR);
        say(
                ctx,
                "That went wrong",
                "The board could not do that. Nothing recorded is lost; the log in the data folder"
                        + " says more.");
    }

    private void notHere(Context ctx) {
        if (ctx.attribute(Pages.WORDED) == null) {
            say(ctx, "Not here", "There is no such page.");
        }
    }

    /** Where the board is, for people. */
    public String link() {
        BoardRules.Place place = rules.place();
        String scheme =
                place.security().kind() == BoardRules.Security.Kind.PLAIN ? "http" : "https";
        String host = place.listen().contains(":") ? "[" + place.listen() + "]" : place.listen();
        boolean every = host.equals("0.0.0.0") || host.equals("[::]");
        String shown = every ? "localhost" : host;
        return scheme + "://" + shown + ":" + server.port() + "/";
    }

    @Override
    public void close() {
        live.close();
        server.stop();
    }
}
