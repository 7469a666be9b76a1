package rainward.daemon.command;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Supplier;
import rainward.brief.words.Reader;
import rainward.cycle.Cycle;
import rainward.daemon.office.Refusal;
import rainward.farm.UnitSystem;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.queue.problem.PlanProblem;
import rainward.queue.reasons.WhatIf;
import rainward.queue.search.Effort;

/**
 * What a change would bring, as JSON shows it.
 *
 * @param edits that were made
 * @param valueHa worth of the order now, less driving and overtime [ha of full stand]
 * @param thenHa worth of the order after the change [ha of full stand]
 * @param fields whose place changes
 */
record OrderWhatIf(String edits, double valueHa, double thenHa, List<Moved> fields) {

    /**
     * A field whose seeding moves.
     *
     * @param field its name
     * @param seedAt start of its seeding now; empty: not in the order
     * @param thenSeedAt start of its seeding after the change
     * @param chanceChange of a stand, percentage points as a share
     */
    record Moved(
            String field,
            Optional<OffsetDateTime> seedAt,
            Optional<OffsetDateTime> thenSeedAt,
            double chanceChange) {}

    /**
     * Plans both ways. A search that ends early leaves something on the table, so that each side
     * sets out once from what the other found; what is left between them is the change's.
     *
     * @param efforts gives the effort of one search
     * @throws Refusal with everything that could not be read
     */
    static OrderWhatIf of(
            Cycle.Result result, String edits, ZoneId zone, Supplier<Effort> efforts) {
        WhatIf then = WhatIf.of(result.problem(), edits);
        if (!then.faults().isEmpty()) {
            throw Refusal.badInput(then.faults());
        }
        Plan before = result.outlook().plan();
        Plan after = better(then.problem(), before, efforts.get());
        Plan again = better(result.problem(), after, efforts.get());
        Plan now = withoutChange(again) > withoutChange(before) ? again : before;
        Plan changed = better(then.problem(), now, efforts.get());
        return new OrderWhatIf(
                edits, withoutChange(now), withoutChange(changed), moved(now, changed, zone));
    }

    /** Searches from an order on. */
    private static Plan better(PlanProblem problem, Plan from, Effort effort) {
        return Planner.plan(problem.withLastOrder(Optional.of(from)), effort);
    }

    private static double withoutChange(Plan plan) {
        return plan.value().totalHa() + plan.value().changeHa();
    }

    private static List<Moved> moved(Plan before, Plan after, ZoneId zone) {
        Map<String, PlanItem> was = seedings(before);
        Map<String, PlanItem> is = seedings(after);
        TreeSet<String> names = new TreeSet<>(was.keySet());
        names.addAll(is.keySet());
        List<Moved> moved = new ArrayList<>();
        for (String name : names) {
            Optional<PlanItem> old = Optional.ofNullable(was.get(name));
            Optional<PlanItem> now = Optional.ofNullable(is.get(name));
            if (!old.map(i -> i.work().from()).equals(now.map(i -> i.work().from()))) {
                moved.add(new Moved(
                        name, start(old, zone), start(now, zone), chance(now) - chance(old)));
            }
        }
        return moved;
    }

    private static Map<String, PlanItem> seedings(Plan plan) {
        Map<String, PlanItem> seedings = new TreeMap<>();
        plan.items().stream()
                .filter(item -> item.sowing().isPresent())
                .forEach(item -> seedings.putIfAbsent(item.place().field(), item));
        return seedings;
    }

    private static Optional<OffsetDateTime> start(Optional<PlanItem> item, ZoneId zone) {
        return item.map(i -> i.work().from().atZone(zone).toOffsetDateTime());
    }

    private static double chance(Optional<PlanItem> item) {
        return item.flatMap(PlanItem::sowing).map(PlanItem.Sowing::chance).orElse(0.0);
    }

    String text(Reader reader) {
        UnitSystem units = reader.units();
        List<String> lines = new ArrayList<>();
        double gain = thenHa - valueHa;
        lines.add("With \"" + edits + "\" the order is worth " + units.area(thenHa)
                + " of full stand, " + units.area(Math.abs(gain))
                + (gain < 0 ? " less" : " more") + " than now. Nothing is changed.");
        if (fields.isEmpty()) {
            lines.add("No seeding moves.");
            return String.join(System.lineSeparator(), lines);
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("field", "seeded now", "then", "stand"));
        fields.forEach(f -> rows.add(List.of(
                f.field(),
                when(f.seedAt(), reader).orElse("not in the order"),
                when(f.thenSeedAt(), reader).orElse("not in the order"),
                String.format(Locale.US, "%+d points", Math.round(100 * f.chanceChange())))));
        lines.add(Sheets.columns(rows));
        return String.join(System.lineSeparator(), lines);
    }

    private static Optional<String> when(Optional<OffsetDateTime> at, Reader reader) {
        return at.map(time -> reader.clock().dateTime(time.toInstant()));
    }
}
