package rainward.input.load;

import java.time.Duration;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Field;
import rainward.farm.Machine;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.SeedingMethod;
import rainward.input.seed.SeedBoxes;
import rainward.input.seed.SeedNeed;
import rainward.input.seed.Sowing;
import rainward.queue.pace.Roads;
import rainward.queue.problem.Filling;
import rainward.queue.problem.Fillings;

/**
 * How often a field empties machines: the one count that orders and load sheets share.
 *
 * @param supplies what is spread and sown, and how machines carry it
 */
public record FillCount(Supplies supplies) {

    /**
     * What the order has to know of a field. Spreaders are counted by whole loads of each product
     * or blend; each load after the first is fetched where the spreader loads, if it does not load
     * at the field. The first comes along with it; the way round by that place between two fields
     * is not counted. Seed that stays in the boxes is used up on the next field, so that fills of a
     * seeder are counted in proportion, by the mix that empties it soonest; where the farm sows
     * several mixes, they are emptied and filled once at each field at least.
     */
    public Fillings of(Field field) {
        Map<Operation, Map<String, Filling>> known = new EnumMap<>(Operation.class);
        for (Machine machine : supplies.roster().crew().machines()) {
            filling(Operation.SPREAD, machine, field, known);
            filling(Operation.SEED, machine, field, known);
        }
        return new Fillings(known);
    }

    private void filling(
            Operation operation,
            Machine machine,
            Field field,
            Map<Operation, Map<String, Filling>> known) {
        if (machine.operations().contains(operation)) {
            Optional<Filling> filling = operation == Operation.SPREAD
                    ? spreading(machine, field)
                    : seeding(machine.name(), field);
            filling.ifPresent(f ->
                    known.computeIfAbsent(operation, o -> new HashMap<>()).put(machine.name(), f));
        }
    }

    private Optional<Filling> spreading(Machine machine, Field field) {
        List<List<Supplies.Spread>> passes = supplies.passes(field.name());
        Optional<Supplies.Spreader> spreader =
                Optional.ofNullable(supplies.gear().spreaders().get(machine.name()));
        if (passes.isEmpty() || spreader.isEmpty()) {
            return Optional.empty();
        }
        int loads = passes.stream()
                .mapToInt(pass -> loads(spreader.get(), kg(pass, field), 0, 1))
                .sum();
        Duration road = spreader.get()
                .loadsAt()
                .map(place -> Roads.minutes(
                        machine,
                        place,
                        supplies.roster().arrivalAt(field),
                        supplies.roster().crew().roadFactor()))
                .map(minutes -> Duration.ofMinutes(2L * minutes * (loads - 1)))
                .orElse(Duration.ZERO);
        return Optional.of(new Filling(passes.size(), loads, road));
    }

    private static double kg(List<Supplies.Spread> pass, Field field) {
        return field.areaHa()
                * pass.stream().mapToDouble(Supplies.Spread::rateKgPerHa).sum();
    }

    /**
     * Loads of one pass for a part of a field. The last load of an evening is finished in the
     * morning, so that parts add up to the field.
     *
     * @param passKg over the whole field [kg]
     * @param doneFraction of the field that was spread before, 0 to 1
     * @param shareFraction of the field that is spread now, 0 to 1
     */
    static int loads(
            Supplies.Spreader spreader, double passKg, double doneFraction, double shareFraction) {
        double loads = passKg / spreader.loadKg();
        return begun(loads * (doneFraction + shareFraction)) - begun(loads * doneFraction);
    }

    private static int begun(double loads) {
        return (int) Math.ceil(loads - 1e-9);
    }

    private Optional<Filling> seeding(String seeder, Field field) {
        Optional<SeedBoxes> boxes = Optional.ofNullable(supplies.gear().boxes().get(seeder));
        Optional<SeedingMethod> method = supplies.roster()
                .recipeOf(field)
                .flatMap(recipe -> recipe.seeding().limits().method());
        if (boxes.isEmpty() || method.isEmpty()) {
            return Optional.empty();
        }
        List<OptionalDouble> fills = supplies.roster().mixesOf(field).stream()
                .map(mix -> fills(boxes.get(), field, mix, method.get()))
                .toList();
        return fills.isEmpty() || fills.stream().anyMatch(OptionalDouble::isEmpty)
                ? Optional.empty()
                : Optional.of(new Filling(
                        1,
                        fills.stream()
                                .mapToDouble(OptionalDouble::getAsDouble)
                                .reduce(severalMixes() ? 1 : 0, Math::max),
                        Duration.ZERO));
    }

    /** True where what is in the boxes may have to come out at any gate. */
    private boolean severalMixes() {
        return supplies.fields().values().stream()
                        .flatMap(field -> supplies.roster().mixesOf(field).stream())
                        .distinct()
                        .limit(2)
                        .count()
                > 1;
    }

    private OptionalDouble fills(SeedBoxes boxes, Field field, Mix mix, SeedingMethod method) {
        SeedNeed need =
                SeedNeed.of(new Sowing(field.name(), field.areaHa(), mix, method), supplies.tags());
        OptionalDouble density = supplies.gear().density().of(need);
        return need.bulkKg().isEmpty() || density.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(need.bulkKg().getAsDouble()
                        / (boxes.capacityKg(density.getAsDouble())
                                - boxes.heelKg(density.getAsDouble())));
    }
}
