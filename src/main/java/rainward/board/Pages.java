package rainward.board;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import rainward.board.api.Api;
import rainward.board.api.Json;
import rainward.board.door.Guard;
import rainward.board.door.Visitor;
import rainward.board.house.Entry;
import rainward.board.house.House;
import rainward.board.house.Saying;
import rainward.board.house.Takes;
import rainward.board.page.FieldPage;
import rainward.board.page.Frame;
import rainward.board.page.GroundPage;
import rainward.board.page.Leaf;
import rainward.board.page.LoadsPage;
import rainward.board.page.MePage;
import rainward.board.page.PostPage;
import rainward.board.page.SeasonPage;
import rainward.board.page.TodayPage;
import rainward.board.page.WeatherPage;

/** The pages, and what is said on them. */
final class Pages {

    /** Marks an answer that holds its own words, so that none are put in its place. */
    static final String WORDED = "worded";

    private final House house;
    private final Takes takes;
    private final Guard guard;
    private final Optional<String> tiles;
    private final Leaf leaf;

    Pages(Board.Inside inside, Leaf leaf, Optional<String> tiles) {
        this.house = inside.house();
        this.takes = inside.takes();
        this.guard = inside.guard();
        this.leaf = leaf;
        this.tiles = tiles;
    }

    void routes(RoutesConfig routes) {
        routes.get(
                "/",
                ctx -> show(
                        ctx,
                        "today",
                        TodayPage.of(
                                frame(ctx, "Today", "/"),
                                Optional.ofNullable(ctx.queryParam("who")))));
        routes.get("/field/{name}", this::field);
        routes.get(
                "/ground",
                ctx -> show(
                        ctx,
                        "ground",
                        GroundPage.of(
                                frame(ctx, "Ground", "/ground"),
                                house.boundaries(),
                                tiles,
                                Optional.ofNullable(ctx.queryParam("find")).orElse(""))));
        routes.get("/loads", ctx -> show(ctx, "loads", loads(frame(ctx, "Loads", "/loads"))));
        routes.get(
                "/weather",
                ctx -> show(
                        ctx,
                        "weather",
                        WeatherPage.of(
                                frame(ctx, "Weather", "/weather"), house.gauges(), house.skill())));
        routes.get(
                "/season",
                ctx -> show(ctx, "season", SeasonPage.of(frame(ctx, "Season", "/season"))));
        routes.get(
                "/post",
                ctx -> show(
                        ctx,
                        "post",
                        PostPage.of(
                                frame(ctx, "Post and health", "/post"),
                                house.outbox(),
                                house.health())));
        routes.get(
                "/me",
                ctx -> show(
                        ctx,
                        "me",
                        new MePage(
                                frame(ctx, "You", "/me"),
                                house.names(),
                                guard.calendarPath(visitor(ctx)))));
        routes.get("/settings", this::settings);
        routes.get("/settings/{kind}", ctx -> entry(ctx, Optional.empty()));
        routes.get(
                "/settings/{kind}/{name}", ctx -> entry(ctx, Optional.of(ctx.pathParam("name"))));
        routes.post("/me", this::me);
        routes.post("/say", this::say);
        routes.get("/calendar.ics", ctx -> {
            visitor(ctx);
            calendar(ctx, Optional.ofNullable(ctx.queryParam("who")));
        });
        routes.get("/calendar/{key}", ctx -> {
            String key = ctx.pathParam("key").replaceFirst("\\.ics$", "");
            guard.ofCalendar(key)
                    .ifPresentOrElse(
                            person -> calendar(ctx, Optional.of(person.name())),
                            () -> ctx.status(HttpStatus.NOT_FOUND));
        });
    }

    private void show(Context ctx, String template, Object page) {
        ctx.html(leaf.draw(template, page));
    }

    /** A few words where no page can be shown. */
    void words(Context ctx, String title, String words) {
        ctx.attribute(WORDED, true);
        show(ctx, "words", new Leaf.Words(title, words, "/"));
    }

    private Frame frame(Context ctx, String title, String here) {
        return new Frame(
                title,
                here,
                house.now(),
                house.standing(),
                visitor(ctx),
                guard.token(ctx),
                Optional.ofNullable(ctx.queryParam("said")));
    }

    /** Who looks; strangers are shown the door. */
    private Visitor visitor(Context ctx) {
        return guard.visitor(ctx)
                .orElseThrow(() ->
                        new Guard.TurnedAway(HttpStatus.UNAUTHORIZED, "Say who you are first."));
    }

    private void field(Context ctx) {
        String name = ctx.pathParam("name");
        house.file(name)
                .ifPresentOrElse(
                        file -> show(
                                ctx,
                                "field",
                                FieldPage.of(
                                        frame(ctx, file.item().field().name(), "/ground"), file)),
                        () -> {
                            visitor(ctx);
                            ctx.status(HttpStatus.NOT_FOUND);
                            words(ctx, "Not here", "There is no field '" + name + "'.");
                        });
    }

    private LoadsPage loads(Frame frame) {
        return LoadsPage.of(frame, house.loads(), house.shed());
    }

    private void settings(Context ctx) {
        Api.mustMay(visitor(ctx), Saying.Act.SETTINGS);
        Frame frame = frame(ctx, "Settings", "/me");
        Optional<String> text = house.settings();
        show(
                ctx,
                "settings",
                new MePage.SettingsPage(
                        frame,
                        house.entries(),
                        text,
                        text.map(Entry::fingerprint).orElse("")));
    }

    private void entry(Context ctx, Optional<String> name) {
        Api.mustMay(visitor(ctx), Saying.Act.ENTRY);
        Optional<Entry> entry = house.entry(ctx.pathParam("kind"), name);
        if (entry.isPresent()) {
            entry(ctx, entry.get(), "");
        } else {
            ctx.status(HttpStatus.NOT_FOUND);
            words(ctx, "Not here", "There is nothing of that name in the settings.");
        }
    }

    private void entry(Context ctx, Entry entry, String fault) {
        Frame frame = frame(ctx, entry.title(), "/me");
        show(ctx, "entry", new MePage.EntryPage(frame, entry, fault));
    }

    private void me(Context ctx) {
        visitor(ctx);
        guard.mustCarryToken(ctx);
        Optional.ofNullable(ctx.formParam("name"))
                .filter(house.names()::contains)
                .ifPresent(name -> guard.choose(ctx, name));
        ctx.redirect("/me", HttpStatus.SEE_OTHER);
    }

    private void calendar(Context ctx, Optional<String> person) {
        house.calendar(person)
                .ifPresentOrElse(
                        text -> ctx.contentType("text/calendar; charset=utf-8").result(text),
                        () -> ctx.status(HttpStatus.NOT_FOUND).result("There is no order yet."));
    }

    /** Takes a word down and goes back to the page that it was said on. */
    private void say(Context ctx) {
        Visitor visitor = visitor(ctx);
        guard.mustCarryToken(ctx);
        Saying.Act act = Api.act(Optional.ofNullable(ctx.formParam("act")).orElse(""));
        Api.mustMay(visitor, act);
        Map<String, String> parts = new LinkedHashMap<>();
        for (var entry : ctx.formParamMap().entrySet()) {
            String text = String.join(",", new ArrayList<>(entry.getValue())).strip();
            if (!text.isEmpty()) {
                parts.put(entry.getKey(), text);
            }
        }
        String key = key(parts, act);
        Saying saying = new Saying(key, visitor.name(), act, parts);
        answer(ctx, takes.take(saying), saying);
    }

    /** One form may have several buttons; each is a word of its own. */
    private static String key(Map<String, String> parts, Saying.Act act) {
        String drawn = parts.getOrDefault("key", "");
        return drawn.endsWith(" " + act) ? drawn : drawn + " " + act;
    }

    /** Without script the form comes again, with the fault and with all that was typed. */
    private boolean typedAgain(Context ctx, Saying saying, Takes.Taken taken) {
        if (saying.act() != Saying.Act.ENTRY) {
            return false;
        }
        Optional<Entry> entry =
                house.entry(saying.part("kind@entry").orElse(""), saying.part("name@entry"));
        entry.ifPresent(e -> entry(ctx, e.typed(saying.parts()), taken.words()));
        return entry.isPresent();
    }

    private void answer(Context ctx, Takes.Taken taken, Saying saying) {
        String back = saying.part("back").orElse("/");

        if (Optional.ofNullable(ctx.header("Accept")).orElse("").contains("application/json")) {
            ctx.status(taken.refused() ? HttpStatus.UNPROCESSABLE_CONTENT : HttpStatus.OK);
            ctx.contentType("application/json").result(Json.of(taken));
        } else if (taken.refused()) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
            if (typedAgain(ctx, saying, taken)) {
                return;
            }
            show(ctx, "words", new Leaf.Words("Not written", taken.words(), own(back)));
        } else {
            String glue = back.contains("?") ? "&" : "?";
            ctx.redirect(
                    own(back) + glue + "said="
                            + URLEncoder.encode(saying.key(), StandardCharsets.UTF_8),
                    HttpStatus.SEE_OTHER);
        }
    }

    /** Only ways within the board. */
    static String own(String back) {
        return back.matches("/(?![/\\\\])[^\\s]*") || back.equals("/") ? back : "/";
    }
}
