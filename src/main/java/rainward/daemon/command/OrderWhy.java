package rainward.daemon.command;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.cycle.AlertStops;
import rainward.cycle.Cycle;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Spelled;
import rainward.farm.DayClock;
import rainward.farm.FieldStatus;
import rainward.farm.UnitSystem;
import rainward.queue.reasons.Binding;
import rainward.queue.reasons.FieldReason;
import rainward.queue.reasons.ItemReason;
import rainward.queue.reasons.OrderReasons;
import rainward.readiness.Readiness;

/**
 * Why a field stands where it does, as JSON shows it.
 *
 * @param field its name
 * @param rank its place in the order; empty where it is not in it
 * @param readiness 0 to 100
 * @param dayLaterHa what it loses if it is seeded a day later [ha of full stand]
 * @param goodUntil until when seeding earns nine tenths of what is planned
 * @param before field that the seeder does just before
 * @param words in a sentence
 * @param items of its work, each with what keeps it from starting sooner
 */
record OrderWhy(
        String field,
        Optional<Integer> rank,
        int readiness,
        double dayLaterHa,
        Optional<OffsetDateTime> goodUntil,
        Optional<String> before,
        String words,
        List<Item> items) {

    /**
     * A piece of its work.
     *
     * @param stage of its recipe
     * @param machine that does it
     * @param start of the work
     * @param binding what keeps it from starting sooner
     * @param words the same for the person
     * @param alert public alert that keeps people off until then, where that is what binds
     */
    record Item(
            String stage,
            String machine,
            OffsetDateTime start,
            String binding,
            String words,
            Optional<String> alert) {

        static Item of(ItemReason why, Sky sky) {
            Instant from = why.item().work().from();
            Optional<String> alert = Optional.of(why)
                    .filter(reason -> reason.binding() == Binding.GROUND)
                    .flatMap(reason ->
                            sky.stops.of(reason.item().place().operation(), from.minusSeconds(1)))
                    .map(stop -> stop.message().event());
            return new Item(
                    why.item().place().stage(),
                    why.item().hands().machine(),
                    from.atZone(sky.zone).toOffsetDateTime(),
                    Spelled.spaced(why.binding()),
                    alert.map(event -> "the public alert \"" + event + "\" keeps people off until"
                                    + " then")
                            .orElse(why.words()),
                    alert);
        }
    }

    /**
     * What stands over the field.
     *
     * @param stops hours that public alerts take there
     * @param zone of the farm
     */
    record Sky(AlertStops stops, ZoneId zone) {}

    static OrderWhy of(Cycle.Result result, String field, Sky sky) {
        Readiness readiness = result.outlook().fields().stream()
                .filter(f -> f.item().field().name().equals(field))
                .map(f -> f.readiness())
                .findFirst()
                .orElseThrow();
        return OrderReasons.of(result.problem(), result.outlook().plan(), field)
                .map(why -> of(why, readiness, sky))
                .orElseGet(() -> absent(result, field, readiness));
    }

    private static OrderWhy of(FieldReason why, Readiness readiness, Sky sky) {
        return new OrderWhy(
                why.field(),
                Optional.of(why.rank()),
                readiness.score(),
                why.dayLaterHa(),
                why.goodUntil().map(at -> at.atZone(sky.zone).toOffsetDateTime()),
                why.before(),
                why.words(),
                why.items().stream().map(item -> Item.of(item, sky)).toList());
    }

    private static OrderWhy absent(Cycle.Result result, String field, Readiness readiness) {
        return new OrderWhy(
                field,
                Optional.empty(),
                readiness.score(),
                0,
                Optional.empty(),
                Optional.empty(),
                whyAbsent(result, field, readiness),
                List.of());
    }

    private static String whyAbsent(Cycle.Result result, String field, Readiness readiness) {
        FieldStatus status = result.outlook().fields().stream()
                .map(f -> f.item())
                .filter(item -> item.field().name().equals(field))
                .map(item -> item.status())
                .findFirst()
                .orElseThrow();
        if (!status.waiting()) {
            return "not in the order: it is " + status.state().words();
        }
        return "not in the order: "
                + result.outlook().plan().whyLeftOut(field).orElse(readiness.reason());
    }

    /** Every field of the order refuses to be explained without a forecast. */
    static void mustHaveForecast(Cycle.Result result) {
        if (result.outlook().forecasts().isEmpty()) {
            throw Refusal.badWorld("There is no forecast yet, so there is no order to explain: run"
                    + " `rainward pull` first.");
        }
    }

    String text(Office office) {
        UnitSystem units = office.settings().farm().units();
        DayClock clock = office.dayClock();
        Instant now = office.now();
        List<String> lines = new ArrayList<>();
        lines.add(field + rank.map(r -> ", number " + r + " in the order").orElse("")
                + ", readiness " + readiness + ": " + words + ".");
        for (Item item : items) {
            lines.add("  " + item.stage() + " by " + item.machine() + ", "
                    + clock.near(item.start().toInstant(), now) + ": " + item.words());
        }
        if (rank.isPresent()) {
            lines.add("  A day later it " + (dayLaterHa < 0 ? "gains " : "loses ")
                    + units.area(Math.abs(dayLaterHa)) + " of full stand.");
        }
        goodUntil.ifPresent(
                at -> lines.add("  Good until " + clock.near(at.toInstant(), now) + "."));
        before.ifPresent(other -> lines.add("  The seeder comes from " + other + "."));
        return String.join(System.lineSeparator(), lines);
    }
}
