package rainward.queue.problem;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Crew;
import rainward.farm.FieldCase;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.Roster;
import rainward.farm.StageRecord;

/** Which mix each seeding machine holds at the moment of planning. */
public final class InBoxes {

    /** What has not sown for so long has been emptied; chosen by us, no source. */
    private static final Duration KEPT_AT_MOST = Duration.ofDays(14);

    private final Crew crew;
    private final Optional<Plan> lastOrder;
    private final Instant asOf;
    private final Map<String, String> mixes = new HashMap<>();
    private final Map<String, Instant> since = new HashMap<>();

    private InBoxes(Crew crew, Optional<Plan> lastOrder, Instant asOf) {
        this.crew = crew;
        this.lastOrder = lastOrder;
        this.asOf = asOf;
    }

    /**
     * A field with how it is seeded.
     *
     * @param item the field; also one whose seed is in
     * @param recipe its chain of stages
     */
    public record Sown(FieldCase item, Recipe recipe) {}

    /**
     * Reads off the records what each machine sowed last. A record tells machine and mix, or else
     * the last order does, or else the machine is the only one that seeds.
     *
     * @param fields every field
     * @param lastOrder given out
     * @param asOf the moment of planning
     * @return mixes by name of machine; no entry where nothing is on record
     */
    public static Map<String, String> recorded(
            List<Sown> fields, Crew crew, Optional<Plan> lastOrder, Instant asOf) {
        InBoxes boxes = new InBoxes(crew, lastOrder, asOf);
        fields.forEach(boxes::read);
        return Map.copyOf(boxes.mixes);
    }

    /** The same for fields of a roster. */
    public static Map<String, String> recorded(
            List<FieldCase> fields, Roster roster, Optional<Plan> lastOrder, Instant asOf) {
        List<Sown> sown = fields.stream()
                .flatMap(item -> roster.recipeOf(item.field()).stream()
                        .map(recipe -> new Sown(item, recipe)))
                .toList();
        return recorded(sown, roster.crew(), lastOrder, asOf);
    }

    private void read(Sown field) {
        String stage = field.recipe().seeding().name();
        Optional<StageRecord> record = field.item().status().of(stage);
        Optional<Instant> seen =
                record.flatMap(r -> r.underWay() ? Optional.of(asOf) : r.finishedAt());
        if (seen.isEmpty() || seen.get().isBefore(asOf.minus(KEPT_AT_MOST))) {
            return;
        }
        Optional<PlanItem> told = told(field.item().field().name(), stage);
        Optional<String> mix = field.item()
                .status()
                .sownMix()
                .or(() -> told.flatMap(PlanItem::sowing).map(PlanItem.Sowing::mix));
        Optional<String> machine = record.flatMap(StageRecord::machine)
                .or(() -> told.map(item -> item.hands().machine()))
                .or(this::onlySeeder);
        machine.ifPresent(by -> mix.ifPresent(what -> seen(by, what, seen.get())));
    }

    private Optional<PlanItem> told(String field, String stage) {
        return lastOrder.stream()
                .flatMap(order -> order.items().stream())
                .filter(item -> item.place().field().equals(field))
                .filter(item -> item.place().stage().equals(stage))
                .findFirst();
    }

    private Optional<String> onlySeeder() {
        List<String> seeders = crew.machines().stream()
                .filter(machine -> machine.operations().contains(Operation.SEED))
                .map(Machine::name)
                .toList();
        return seeders.size() == 1 ? Optional.of(seeders.get(0)) : Optional.empty();
    }

    private void seen(String machine, String mix, Instant at) {
        boolean later = Optional.ofNullable(since.get(machine)).map(at::isAfter).orElse(true);
        if (later) {
            since.put(machine, at);
            mixes.put(machine, mix);
        }
    }
}
