package rainward.board.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.javalin.config.RoutesConfig;
import io.javalin.http.ContentType;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.board.door.Guard;
import rainward.board.door.Role;
import rainward.board.door.Visitor;
import rainward.board.house.House;
import rainward.board.house.Mark;
import rainward.board.house.Saying;
import rainward.board.house.Sheet;
import rainward.board.house.Takes;

/** JSON for programs. */
public final class Api {

    /** How long a program may wait for the first order before it asks again [s]. */
    private static final String NOT_YET_S = "10";

    private final House house;
    private final Takes takes;
    private final Guard guard;

    public Api(House house, Takes takes, Guard guard) {
        this.house = house;
        this.takes = takes;
        this.guard = guard;
    }

    /** Who asks, and the token that words carry. */
    record Session(String name, String role, String token) {}

    /**
     * Whether the service is well.
     *
     * @param status well or ill
     * @param turn counts up with every change
     * @param marks what was looked at, in words; none for a stranger
     */
    record Health(String status, long turn, List<Mark> marks) {}

    /**
     * A word.
     *
     * @param key drawn by the caller; the same word told twice has the same key
     * @param act what is said, for instance done
     * @param parts by the names of the commands' arguments
     */
    record Said(String key, String act, Map<String, String> parts) {}

    /** Puts the routes in. */
    public void routes(RoutesConfig routes) {
        for (Sheet sheet : house.sheets()) {
            routes.get("/api/1/" + sheet.name(), ctx -> {
                mustKnow(ctx);
                sheet(ctx, sheet);
            });
        }
        routes.get(
                "/api/1/openapi.json",
                ctx -> ctx.contentType(ContentType.APPLICATION_JSON)
                        .result(OpenApi.of(house.sheets())));
        routes.get("/api/1/session", ctx -> {
            Visitor visitor = guard.visitor(ctx).orElseThrow(Api::stranger);
            String role = visitor.role().name().toLowerCase(Locale.ROOT);
            json(ctx, new Session(visitor.name(), role, guard.token(ctx)));
        });
        routes.post("/api/1/say", this::say);
        routes.get("/health", this::health);
    }

    private void mustKnow(Context ctx) {
        if (guard.visitor(ctx).isEmpty()) {
            throw stranger();
        }
    }

    private static Guard.TurnedAway stranger() {
        return new Guard.TurnedAway(HttpStatus.UNAUTHORIZED, "Say who you are first: /door");
    }

    private static void json(Context ctx, Object value) {
        ctx.contentType(ContentType.APPLICATION_JSON).result(Json.of(value));
    }

    private static void sheet(Context ctx, Sheet sheet) {
        Optional<?> result = sheet.result().get();
        if (result.isPresent()) {
            json(ctx, result.get());
        } else {
            ctx.status(HttpStatus.SERVICE_UNAVAILABLE).header("Retry-After", NOT_YET_S);
            json(ctx, new Takes.Taken("not yet", "The first order is being worked out."));
        }
    }

    private void health(Context ctx) {
        List<Mark> marks = house.health();
        boolean well = marks.stream().allMatch(Mark::well);
        ctx.status(well ? HttpStatus.OK : HttpStatus.SERVICE_UNAVAILABLE);
        List<Mark> shown = guard.visitor(ctx).isPresent() ? marks : List.of();
        json(ctx, new Health(well ? "well" : "ill", house.standing().turn(), shown));
    }

    private void say(Context ctx) {
        Visitor visitor = guard.visitor(ctx).orElseThrow(Api::stranger);
        guard.mustCarryToken(ctx);
        Optional<Said> said = said(ctx.body());
        if (said.isEmpty()) {
            ctx.status(HttpStatus.BAD_REQUEST);
            json(
                    ctx,
                    new Takes.Taken(
                            "refused",
                            "Send {\"key\":…, \"act\":…, \"parts\":{…}}; see openapi.json."));
            return;
        }
        Saying.Act act = act(said.get().act());
        mustMay(visitor, act);
        Takes.Taken taken = takes.take(
                new Saying(said.get().key(), visitor.name(), act, said.get().parts()));
        ctx.status(taken.refused() ? HttpStatus.UNPROCESSABLE_CONTENT : HttpStatus.OK);
        json(ctx, taken);
    }

    /** What a program sent; empty where a part of it is missing or is no text. */
    private static Optional<Said> said(String body) {
        try {
            return Optional.ofNullable(Json.MAPPER.readValue(body, Said.class))
                    .filter(said -> Stream.of(said.key(), said.act(), said.parts())
                            .allMatch(Objects::nonNull))
                    .filter(said -> said.parts().values().stream().allMatch(Objects::nonNull));
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    /** The act of a name, in any case. */
    public static Saying.Act act(String name) {
        return Optional.ofNullable(name).stream()
                .flatMap(n -> java.util.Arrays.stream(Saying.Act.values())
                        .filter(a -> a.name().equalsIgnoreCase(n.strip())))
                .findFirst()
                .orElseThrow(() -> new Guard.TurnedAway(
                        HttpStatus.BAD_REQUEST, "'" + name + "' is nothing that can be said."));
    }

    /** Turns away who may not say that. */
    public static void mustMay(Visitor visitor, Saying.Act act) {
        if (!visitor.may(act.leadOnly() ? Role.LEAD : Role.CREW)) {
            throw new Guard.TurnedAway(
                    HttpStatus.FORBIDDEN, visitor.name() + " may not say that; ask the lead.");
        }
    }
}
