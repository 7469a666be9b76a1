package rainward.queue.problem;

import java.time.Duration;
import java.time.Instant;
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
    private final LastSeen<String> mixes;

    private InBoxes(Crew crew, LastSeen<String> mixes) {
        this.crew = crew;
        this.mixes = mixes;
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
        InBoxes boxes = new InBoxes(crew, new LastSeen<>(lastOrder, asOf, KEPT_AT_MOST));
        fields.forEach(boxes::read);
        return boxes.mixes.newest();
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
        Optional<Instant> seen = record.flatMap(mixes::when);
        if (seen.isEmpty()) {
            return;
        }
        Optional<PlanItem> told = mixes.told(field.item().field().name(), stage).findFirst();
        Optional<String> mix = field.item()
                .status()
                .sownMix()
                .or(() -> told.flatMap(PlanItem::sowing).map(PlanItem.Sowing::mix));
        Optional<String> machine = record.flatMap(StageRecord::machine)
                .or(() -> told.map(item -> item.hands().machine()))
                .or(this::onlySeeder);
        machine.ifPresent(by -> mix.ifPresent(what -> mixes.note(by, what, seen.get())));
    }

    private Optional<String> onlySeeder() {
        List<String> seeders = crew.machines().stream()
                .filter(machine -> machine.operations().contains(Operation.SEED))
                .map(Machine::name)
                .toList();
        return seeders.size() == 1 ? Optional.of(seeders.get(0)) : Optional.empty();
    }
}
