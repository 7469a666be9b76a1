package rainward.daemon.board;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import java.util.stream.Collectors;
import rainward.board.house.Standing;
import rainward.cycle.Cycle;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.service.Rounds;
import rainward.farm.DayClock;
import rainward.queue.problem.Plan;
import rainward.queue.reasons.FieldReason;
import rainward.queue.reasons.OrderChange;
import rainward.queue.reasons.OrderChanges;
import rainward.queue.reasons.OrderReasons;

/** How things stand: the last round, and what people said since. */
final class Standings implements Rounds.Hearer {

    /** Words that are shown as said lately. */
    private static final int LATELY = 8;

    /** Lines about the order that one word is answered with. */
    private static final int MOST_CHANGES = 6;

    private final Office office;
    private final PostDesk post;
    private final List<Runnable> hearers = new CopyOnWriteArrayList<>();
    private final FieldPlace places;
    private Standing standing;
    private Set<String> inThisRound = Set.of();

    Standings(Office office, PostDesk post) {
        this.office = office;
        this.post = post;
        var farm = office.settings().farm();
        this.places = new FieldPlace(new DayClock(farm.zone(), farm.units()));
        this.standing = new Standing(
                0,
                new Standing.Farm(farm.name(), farm.zone(), farm.units()),
                Optional.empty(),
                true,
                List.of());
    }

    synchronized Standing now() {
        return standing;
    }

    void whenChanged(Runnable told) {
        hearers.add(told);
    }

    /** Words that are written down by now are in the round that begins. */
    @Override
    public synchronized void begins() {
        inThisRound =
                standing.effects().stream().map(Standing.Effect::key).collect(Collectors.toSet());
    }

    /** A round was reckoned; the words that are in it learn what they changed. */
    @Override
    public void reckoned(Cycle.Result result) {
        List<OrderChange> all =
                OrderChanges.of(result.problem(), result.outlook().plan()).changes();
        Orders orders = new Orders(
                now().round().map(shown -> shown.outlook().plan()),
                result.outlook().plan());
        Standing.Round round = round(result);
        change(before -> new Standing(
                before.turn() + 1,
                before.farm(),
                Optional.of(round),
                before.effects().stream().anyMatch(this::comesLater),
                before.effects().stream()
                        .map(e -> waits(e) ? e.with(lines(e, all, orders)) : e)
                        .toList()));
    }

    /** A word said while the round was being reckoned waits for the next one. */
    private boolean waits(Standing.Effect effect) {
        return effect.changed().isEmpty() && inThisRound.contains(effect.key());
    }

    /** The field that was spoken of comes first, moved or not; then as many others as fit. */
    private List<String> lines(Standing.Effect effect, List<OrderChange> changes, Orders orders) {
        List<String> lines = new ArrayList<>();
        effect.about()
                .map(about -> about.field() + ": "
                        + FieldPlace.change(about.stood(), places.in(orders.now(), about.field())))
                .ifPresent(lines::add);
        List<OrderChange> others = changes.stream()
                .filter(change -> effect.about()
                        .filter(about -> about.field().equals(change.field()))
                        .isEmpty())
                .toList();
        others.stream()
                .limit(MOST_CHANGES)
                .map(change -> change.field() + ": " + moved(change, orders))
                .forEach(lines::add);
        if (others.size() > MOST_CHANGES) {
            lines.add((others.size() - MOST_CHANGES) + " more");
        }
        return lines;
    }

    private String moved(OrderChange change, Orders orders) {
        return orders.before()
                .map(before -> FieldPlace.change(
                        places.in(before, change.field()), places.in(orders.now(), change.field())))
                .orElse(change.words());
    }

    /** The order that was shown, if there was one, and the one that is shown from now on. */
    private record Orders(Optional<Plan> before, Plan now) {}

    /** The field that a text means, where it stands in the order that is shown now. */
    synchronized Optional<Standing.About> about(String text) {
        return standing.round()
                .map(Standing.Round::outlook)
                .flatMap(outlook -> NameMatch.of(
                                text,
                                outlook.fields().stream()
                                        .map(field -> field.item().field().name())
                                        .toList())
                        .unique()
                        .map(name -> new Standing.About(name, places.in(outlook.plan(), name))));
    }

    private boolean comesLater(Standing.Effect effect) {
        return effect.changed().isEmpty() && !inThisRound.contains(effect.key());
    }

    private Standing.Round round(Cycle.Result result) {
        Map<String, FieldReason> reasons = result.outlook().forecasts().isEmpty()
                ? Map.of()
                : OrderReasons.of(result.problem(), result.outlook().plan()).stream()
                        .collect(Collectors.toMap(FieldReason::field, r -> r, (a, b) -> a));
        Instant asOf = result.outlook().asOf();
        return new Standing.Round(
                result.outlook(), post.brief(result, asOf), reasons, office.roster());
    }

    /** Somebody said something; the order is being worked out. */
    void said(Standing.Effect effect) {
        change(before -> {
            List<Standing.Effect> effects = new ArrayList<>();
            effects.add(effect);
            before.effects().stream()
                    .filter(e -> !e.key().equals(effect.key()))
                    .limit(LATELY - 1)
                    .forEach(effects::add);
            boolean reckoning = before.reckoning() || effect.changed().isEmpty();
            return new Standing(
                    before.turn() + 1, before.farm(), before.round(), reckoning, effects);
        });
    }

    /** The new order could not be worked out; the old one stays. */
    void failed() {
        change(before -> new Standing(
                before.turn() + 1, before.farm(), before.round(), false, before.effects()));
    }

    private void change(Function<Standing, Standing> step) {
        synchronized (this) {
            standing = step.apply(standing);
        }
        hearers.forEach(Runnable::run);
    }
}
