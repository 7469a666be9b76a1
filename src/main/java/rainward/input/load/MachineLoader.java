package rainward.input.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.farm.Field;
import rainward.farm.Operation;
import rainward.input.Gap;
import rainward.input.load.LoadSheet.Amount;
import rainward.input.load.LoadSheet.Line;
import rainward.input.load.LoadSheet.MachineSheet;
import rainward.input.load.LoadSheet.Pass;
import rainward.input.seed.Fill;
import rainward.input.seed.Route;
import rainward.input.seed.SeedBoxes;
import rainward.input.seed.SeedNeed;
import rainward.input.seed.Sowing;
import rainward.input.seeder.SeedSize;
import rainward.input.seeder.StartingSetting;
import rainward.queue.problem.PlanItem;

/** Works out the day of one machine after another, and gathers what it could not work out. */
final class MachineLoader {
    private final Supplies supplies;
    private final List<PlanItem> all;
    private final List<Gap> gaps = new ArrayList<>();

    /**
     * A loader for machines of one plan.
     *
     * @param all items of the plan, on whatever day
     */
    MachineLoader(Supplies supplies, List<PlanItem> all) {
        this.supplies = supplies;
        this.all = List.copyOf(all);
    }

    List<Gap> gaps() {
        return gaps;
    }

    /** The day of the machine that does these items, in order of start. */
    MachineSheet sheet(List<PlanItem> items) {
        String machine = items.get(0).hands().machine();
        List<Line> lines = new ArrayList<>();
        List<Fill.Leg> legs = new ArrayList<>();
        for (PlanItem item : items) {
            Optional<Field> field = known(
                    supplies.field(item.place().field()),
                    new Gap(item.place().field(), "field is not known", "import it again"));
            field.ifPresent(f -> lines.add(line(item, f, legs)));
        }
        return new MachineSheet(machine, lines, fills(machine, legs));
    }

    private Line line(PlanItem item, Field field, List<Fill.Leg> legs) {
        double areaHa = field.areaHa() * item.shareFraction();
        if (item.place().operation() == Operation.SPREAD) {
            return spreading(item, field, areaHa);
        }
        return item.sowing()
                .flatMap(sowing -> sowing(item, field, areaHa))
                .map(sowing -> seeding(item, sowing, legs))
                .orElseGet(() -> new Line(item, areaHa, List.of(), Optional.empty()));
    }

    private Line spreading(PlanItem item, Field field, double areaHa) {
        List<Pass> passes = supplies.passes(field.name()).stream()
                .map(pass -> pass(item, field, pass))
                .toList();
        if (passes.isEmpty()) {
            gaps.add(new Gap(
                    field.name(),
                    "no lime or fertilizer is worked out for " + item.place().stage(),
                    "enter its soil test, or what to spread"));
        }
        return new Line(item, areaHa, passes, Optional.empty());
    }

    private Pass pass(PlanItem item, Field field, List<Supplies.Spread> spreads) {
        double areaHa = field.areaHa() * item.shareFraction();
        double passKg = field.areaHa()
                * spreads.stream().mapToDouble(Supplies.Spread::rateKgPerHa).sum();
        String machine = item.hands().machine();
        int loads = known(
                        Optional.ofNullable(supplies.gear().spreaders().get(machine)),
                        new Gap(machine, "size of its load is not known", "weigh a full load"))
                .map(spreader ->
                        FillCount.loads(spreader, passKg, doneBefore(item), item.shareFraction()))
                .orElse(0);
        return new Pass(
                spreads.stream()
                        .map(spread -> new Amount(spread.product(), spread.rateKgPerHa() * areaHa))
                        .toList(),
                loads);
    }

    /** Share of the field that is done by the start of an item; what is done now is in no item. */
    private double doneBefore(PlanItem item) {
        double from = all.stream()
                .filter(other -> other.place().equals(item.place()))
                .filter(other -> !other.work().from().isBefore(item.work().from()))
                .mapToDouble(PlanItem::shareFraction)
                .sum();
        return Math.max(0, 1 - from);
    }

    private Optional<Sowing> sowing(PlanItem item, Field field, double areaHa) {
        String mix = item.sowing().orElseThrow().mix();
        return known(
                        Optional.ofNullable(supplies.roster().mixes().get(mix)),
                        new Gap(mix, "mix is not known", "add it to the table of mixes"))
                .flatMap(known -> known(
                                supplies.roster()
                                        .recipeOf(field)
                                        .flatMap(r -> r.seeding().limits().method()),
                                new Gap(
                                        field.name(),
                                        "recipe does not say how seed is put down",
                                        "name rolled, drilled or broadcast in its seeding stage"))
                        .map(method -> new Sowing(field.name(), areaHa, known, method)));
    }

    private Line seeding(PlanItem item, Sowing sowing, List<Fill.Leg> legs) {
        String machine = item.hands().machine();
        SeedNeed need = SeedNeed.of(sowing, supplies.tags());
        gaps.addAll(need.gaps());
        OptionalDouble rate = need.bulkRateKgPerHa();
        if (rate.isPresent()) {
            leg(need, rate.getAsDouble()).ifPresent(legs::add);
        }
        Optional<StartingSetting> setting = rate.isPresent()
                ? known(
                        StartingSetting.of(
                                machine,
                                SeedSize.of(sowing.mix()),
                                rate.getAsDouble(),
                                supplies.gear().settings()),
                        StartingSetting.gap(machine, SeedSize.of(sowing.mix())))
                : Optional.empty();
        List<Amount> amounts = need.parts().stream()
                .filter(part -> part.bulkKg().isPresent())
                .map(part -> new Amount(part.species(), part.bulkKg().getAsDouble()))
                .toList();
        return new Line(
                item,
                sowing.areaHa(),
                amounts.isEmpty() ? List.of() : List.of(new Pass(amounts, 0)),
                setting);
    }

    private Optional<Fill.Leg> leg(SeedNeed need, double rateKgPerHa) {
        Sowing sowing = need.sowing();
        OptionalDouble density = supplies.gear().density().of(need);
        if (density.isEmpty()) {
            gaps.add(new Gap(
                    sowing.mix().name(),
                    "weight by volume is not known, so fills are not",
                    "weigh a bucket of known volume, filled level"));
            return Optional.empty();
        }
        return Optional.of(new Fill.Leg(
                sowing.field(),
                sowing.mix().name(),
                sowing.areaHa(),
                rateKgPerHa,
                density.getAsDouble()));
    }

    private List<Fill> fills(String machine, List<Fill.Leg> legs) {
        if (legs.isEmpty()) {
            return List.of();
        }
        Optional<SeedBoxes> boxes = known(
                Optional.ofNullable(supplies.gear().boxes().get(machine)),
                new Gap(machine, "seed boxes are not described", "enter their number and volume"));
        return boxes.map(known -> Route.fills(known, legs)).orElse(List.of());
    }

    /** Notes the gap where there is nothing. */
    private <T> Optional<T> known(Optional<T> thing, Gap otherwise) {
        if (thing.isEmpty()) {
            gaps.add(otherwise);
        }
        return thing;
    }
}
