package rainward.input.stock;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.farm.SeedingMethod;
import rainward.input.load.LoadSheet;
import rainward.input.load.Supplies;
import rainward.input.seed.SeedLot;
import rainward.queue.problem.Plan;

/** What the days ahead take, and how far the seed in the shed goes. */
public final class Demands {

    private Demands() {}

    /** Item by item and day by day, without spare. */
    public static List<Stock.Demand> of(Plan plan, Supplies supplies) {
        ZoneId zone = supplies.roster().crew().zone();
        List<LocalDate> days = plan.items().stream()
                .map(item -> item.work().from().atZone(zone).toLocalDate())
                .distinct()
                .sorted()
                .toList();
        return days.stream()
                .map(day -> LoadSheet.of(day, plan, supplies))
                .flatMap(sheet -> sheet.totals().stream()
                        .map(total -> new Stock.Demand(total.what(), sheet.day(), total.needKg())))
                .toList();
    }

    /**
     * Hectares that the seed in the shed is enough for: what the planner asks by mix.
     *
     * @param lots of any species; a component without a lot has none
     * @return [ha]; empty where a tag is missing, for then nobody knows
     */
    public static OptionalDouble areaHa(Mix mix, SeedingMethod method, List<SeedLot> lots) {
        boolean unread = mix.components().stream()
                .flatMap(component -> lotsOf(component, lots))
                .anyMatch(lot -> lot.tag().isEmpty());
        return unread
                ? OptionalDouble.empty()
                : mix.components().stream()
                        .mapToDouble(component -> lotsOf(component, lots)
                                        .mapToDouble(Demands::liveKg)
                                        .sum()
                                / component.rateKgPerHa(method))
                        .min();
    }

    private static Stream<SeedLot> lotsOf(MixComponent component, List<SeedLot> lots) {
        return lots.stream()
                .filter(lot -> lot.species().equals(component.species().name()));
    }

    private static double liveKg(SeedLot lot) {
        return lot.onHandKg() * lot.tag().orElseThrow().pureLiveFraction();
    }
}
