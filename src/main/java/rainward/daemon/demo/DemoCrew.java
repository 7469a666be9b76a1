package rainward.daemon.demo;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import rainward.daemon.office.Office;
import rainward.farm.Field;
import rainward.farm.Recipe;
import rainward.queue.problem.PlanItem;
import rainward.store.journal.StageWord;
import rainward.store.journal.Verdict;

/** The demo's crew does what the order says, to the minute. */
final class DemoCrew {

    private final Office office;

    DemoCrew(Office office) {
        this.office = office;
    }

    /** Writes down what the order given out last puts before a moment; which stages were done. */
    List<PlanItem> workUntil(Instant moment) {
        List<PlanItem> done = new ArrayList<>();
        List<PlanItem> items = office.store()
                .read(books -> books.plans().last())
                .map(given -> given.plan().items())
                .orElse(List.of());
        items.stream()
                .filter(item -> item.work().from().isBefore(moment))
                .sorted(Comparator.comparing(item -> item.work().to()))
                .forEach(item -> {
                    if (lastPart(item, items) && !item.work().to().isAfter(moment)) {
                        if (write(item, item.work().to(), true)) {
                            done.add(item);
                        }
                    } else {
                        write(item, item.work().from(), false);
                    }
                });
        return done;
    }

    /** Writes down what was done before the demo begins, by the beginning of a field's name. */
    int hasDone(Map<String, List<String>> stagesByField) {
        int written = 0;
        for (var entry : new TreeMap<>(stagesByField).entrySet()) {
            Field field = field(office.fieldNamed(entry.getKey()));
            ZonedDateTime at = office.now().atZone(office.zone()).minusDays(4);
            for (String stage : entry.getValue()) {
                at = at.plusHours(3);
                written += write(
                                field,
                                new StageWord(
                                        field.name(),
                                        stage,
                                        new StageWord.Said(
                                                at.toInstant(),
                                                at.toInstant(),
                                                "Dell",
                                                office.dayClock()),
                                        StageWord.Means.UNSAID),
                                true)
                        ? 1
                        : 0;
            }
        }
        return written;
    }

    private Field field(String name) {
        return office.store().read(books -> books.fields().named(name)).orElseThrow();
    }

    /** Long work is cut into several items; the stage is done with the last one. */
    private static boolean lastPart(PlanItem item, List<PlanItem> items) {
        return items.stream()
                .filter(other -> other.place().equals(item.place()))
                .noneMatch(other -> other.work().from().isAfter(item.work().from()));
    }

    private boolean write(PlanItem item, Instant at, boolean finished) {
        Field field = field(item.place().field());
        StageWord word = new StageWord(
                item.place().field(),
                item.place().stage(),
                new StageWord.Said(at, at, item.hands().person(), office.dayClock()),
                new StageWord.Means(
                        Optional.of(item.hands().machine()),
                        item.sowing().map(PlanItem.Sowing::mix),
                        Set.of()));
        return write(field, word, finished);
    }

    private boolean write(Field field, StageWord word, boolean finished) {
        Recipe recipe = office.roster().recipeOf(field).orElseThrow();
        Verdict verdict = office.store()
                .inTransaction(books -> finished
                        ? books.journal().done(word, field, recipe)
                        : books.journal().started(word, field, recipe));
        return verdict instanceof Verdict.Written;
    }
}
