package rainward.board;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import rainward.board.door.Doorbell;
import rainward.board.door.Guard;
import rainward.board.door.Keyring;
import rainward.board.door.Person;
import rainward.board.house.House;
import rainward.board.page.DoorPage;
import rainward.board.page.Leaf;

/** Coming in and going out, where a PIN is asked for. */
final class Door {

    private final House house;
    private final Guard guard;
    private final Keyring keyring;
    private final Doorbell bell;
    private final Leaf leaf;

    Door(Board.Inside inside, Leaf leaf, Keyring keyring) {
        this.house = inside.house();
        this.guard = inside.guard();
        this.leaf = leaf;
        this.keyring = keyring;
        this.bell = new Doorbell(keyring);
    }

    void routes(RoutesConfig routes) {
        routes.get("/door", ctx -> show(ctx, ""));
        routes.post("/door", this::ring);
        routes.post("/leave", this::leave);
    }

    private void show(Context ctx, String words) {
        String back = Optional.ofNullable(ctx.queryParam("back"))
                .or(() -> Optional.ofNullable(ctx.formParam("back")))
                .orElse("/");
        ctx.html(leaf.draw(
                "door",
                new DoorPage(
                        house.standing().farm().name(),
                        keyring.people().stream().map(Person::name).toList(),
                        guard.token(ctx),
                        Pages.own(back),
                        words)));
    }

    private void ring(Context ctx) {
        guard.mustCarryToken(ctx);
        Doorbell.Ring ring = bell.ring(
                Optional.ofNullable(ctx.formParam("name")).orElse(""),
                Optional.ofNullable(ctx.formParam("pin")).orElse(""),
                ctx.ip());
        ring.person()
                .ifPresentOrElse(
                        person -> {
                            guard.enter(ctx, person);
                            String back =
                                    Optional.ofNullable(ctx.formParam("back")).orElse("/");
                            ctx.redirect(Pages.own(back), HttpStatus.SEE_OTHER);
                        },
                        () -> {
                            ctx.status(HttpStatus.UNAUTHORIZED);
                            show(ctx, ring.words());
                        });
    }

    private void leave(Context ctx) {
        guard.mustCarryToken(ctx);
        guard.leave(ctx);
        ctx.redirect("/door", HttpStatus.SEE_OTHER);
    }
}
