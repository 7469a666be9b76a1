package rainward.brief.making;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rainward.brief.Change;
import rainward.brief.Change.Kind;
import rainward.brief.Literal;
import rainward.brief.making.BriefInput.LastBrief;
import rainward.cycle.Outlook;
import rainward.cycle.RainPicture;
import rainward.farm.FieldState;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;

/** What is different from the order before, and why, as far as the numbers tell. */
final class Changes {

    /** A start that moves by less is not worth a line: common practice, no source. */
    private static final Duration WORTH_A_LINE = Duration.ofHours(2);

    /** A chance that moves by less explains nothing. */
    private static final double CHANCE_STEP = 0.05;

    /** A chance of rain that moves by less explains nothing. */
    private static final double RAIN_STEP = 0.15;

    private final LastBrief last;
    private final Outlook now;

    Changes(LastBrief last, Outlook now) {
        this.last = last;
        this.now = now;
    }

    List<Change> all() {
        List<Change> all = new ArrayList<>();
        for (String field : fields()) {
            change(field).ifPresent(all::add);
        }
        all.sort(Comparator.comparing(Change::kind));
        return all;
    }

    private Set<String> fields() {
        Set<String> names = new LinkedHashSet<>();
        Stream.of(now.plan(), last.plan())
                .flatMap(plan -> plan.items().stream())
                .filter(item -> item.sowing().isPresent())
                .forEach(item -> names.add(item.place().field()));
        return names;
    }

    private Optional<Change> change(String field) {
        Optional<PlanItem> before = last.plan().seedingOf(field);
        Optional<PlanItem> after = now.plan().seedingOf(field);
        return kind(before, after, field)
                .map(kind -> new Change(
                        Literal.of(field),
                        kind,
                        before.map(item -> item.work().from()),
                        after.map(item -> item.work().from()),
                        Literal.of(why(kind, field))));
    }

    private Optional<Kind> kind(Optional<PlanItem> before, Optional<PlanItem> after, String field) {
        if (after.isEmpty()) {
            return Optional.of(seeded(field) ? Kind.SEEDED : Kind.TAKEN_OUT);
        }
        if (before.isEmpty()) {
            return Optional.of(Kind.ADDED);
        }
        Instant was = before.get().work().from();
        Instant is = after.get().work().from();
        if (Duration.between(was, is).abs().compareTo(WORTH_A_LINE) > 0) {
            return Optional.of(is.isBefore(was) ? Kind.EARLIER : Kind.LATER);
        }
        return mix(before).equals(mix(after)) ? Optional.empty() : Optional.of(Kind.OTHER_MIX);
    }

    private boolean seeded(String field) {
        return now.field(field)
                .map(f -> f.item().status().state())
                .filter(s -> s == FieldState.SEEDED || s == FieldState.UP)
                .isPresent();
    }

    private String why(Kind kind, String field) {
        return switch (kind) {
            case SEEDED -> "seed is in";
            case ADDED -> whyAdded(field);
            case TAKEN_OUT -> whyTakenOut(field);
            case OTHER_MIX ->
                mix(last.plan().seedingOf(field)) + " before, " + mix(now.plan().seedingOf(field))
                        + " now";
            case EARLIER, LATER -> whyMoved(kind, field);
        };
    }

    private String whyAdded(String field) {
        if (now.field(field).filter(f -> state(f) == FieldState.FAILED).isPresent()) {
            return "no stand came up; it is back in the queue";
        }
        return last.plan()
                .whyLeftOut(field)
                .map(why -> "was left out (" + why + "), fits now")
                .orElse("");
    }

    private String whyTakenOut(String field) {
        return now.plan()
                .whyLeftOut(field)
                .or(() -> now.field(field)
                        .flatMap(f -> f.readiness().gates().stream().findFirst())
                        .map(gate -> gate.words()))
                .orElse("no longer in the queue");
    }

    private String whyMoved(Kind kind, String field) {
        return Stream.<Optional<String>>of(
                        pinned(field),
                        rainMoved(field),
                        chanceMoved(field),
                        kind == Kind.EARLIER ? roomMadeBy(field) : roomMadeFor(field))
                .flatMap(Optional::stream)
                .findFirst()
                .orElse("it fits better into the order as a whole");
    }

    private Optional<String> pinned(String field) {
        return now.field(field)
                .filter(f -> f.item().status().pinnedFirst())
                .map(f -> "put first by hand");
    }

    /** Compares only six hours that both briefs speak of: a new last day explains nothing. */
    private Optional<String> rainMoved(String field) {
        String property =
                now.plan().seedingOf(field).map(item -> item.place().property()).orElse("");
        return bars(now.rain(), property)
                .flatMap(is -> bars(last.rain(), property)
                        .filter(was -> was.window().equals(is.window()))
                        .map(was -> new Shift(was.chance(), is.chance())))
                .max(Comparator.comparingDouble(Shift::size))
                .filter(shift -> shift.size() >= RAIN_STEP)
                .map(shift -> "rain at " + property + shift.words());
    }

    private static Stream<RainPicture.Bar> bars(Map<String, RainPicture> rain, String property) {
        return Optional.ofNullable(rain.get(property)).stream()
                .flatMap(picture -> picture.bars().stream());
    }

    private Optional<String> chanceMoved(String field) {
        return chance(last.plan().seedingOf(field))
                .flatMap(was -> chance(now.plan().seedingOf(field)).map(is -> new Shift(was, is)))
                .filter(shift -> shift.size() >= CHANCE_STEP)
                .map(shift -> "chance of a stand as planned" + shift.words());
    }

    /** A chance before and now. */
    private record Shift(double wasChance, double isChance) {

        double size() {
            return Math.abs(isChance - wasChance);
        }

        String words() {
            return String.format(
                    Locale.ROOT,
                    ": %d%% before, %d%% now",
                    Math.round(100 * wasChance),
                    Math.round(100 * isChance));
        }
    }

    /** A field that stood before this one and is gone. */
    private Optional<String> roomMadeBy(String field) {
        return seedingBefore(last.plan(), field)
                .filter(other -> now.plan().seedingOf(other).isEmpty())
                .findFirst()
                .map(other -> other + " is out of the way");
    }

    /** A field that stood behind this one and now stands before it. */
    private Optional<String> roomMadeFor(String field) {
        Set<String> stoodBefore =
                new LinkedHashSet<>(seedingBefore(last.plan(), field).toList());
        return seedingBefore(now.plan(), field)
                .filter(other -> !stoodBefore.contains(other))
                .findFirst()
                .map(other -> "makes room for " + other);
    }

    private static Stream<String> seedingBefore(Plan plan, String field) {
        int rank = plan.seedingOf(field).map(PlanItem::rank).orElse(0);
        return plan.items().stream()
                .filter(item -> item.sowing().isPresent() && item.rank() < rank)
                .map(item -> item.place().field());
    }

    private static FieldState state(Outlook.FieldOutlook field) {
        return field.item().status().state();
    }

    private static String mix(Optional<PlanItem> item) {
        return item.flatMap(PlanItem::sowing).map(s -> s.mix()).orElse("");
    }

    private static Optional<Double> chance(Optional<PlanItem> item) {
        return item.flatMap(PlanItem::sowing).map(s -> s.chance());
    }
}
