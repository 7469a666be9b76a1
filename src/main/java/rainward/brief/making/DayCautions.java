package rainward.brief.making;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import rainward.brief.Caution;
import rainward.brief.Literal;
import rainward.cycle.Outlook;
import rainward.farm.FieldCase;
import rainward.farm.Operation;
import rainward.farm.Window;
import rainward.queue.problem.PlanItem;
import rainward.weather.sky.HourlyAir;

/** The dangers of one day, from its weather, its work and its ground. */
final class DayCautions {

    /** Rain as likely as that brings the word on thunder: common practice, no source. */
    private static final double THUNDER_FROM = 0.15;

    /** Slopes from here on are named: common practice, no source. */
    private static final double STEEP_FROM_FRACTION = 0.12;

    private final Window day;
    private final BriefInput input;
    private final List<PlanItem> work;

    DayCautions(Window day, BriefInput input) {
        this.day = day;
        this.input = input;
        this.work = input.outlook().plan().items().stream()
                .filter(item -> item.work().overlaps(day))
                .toList();
    }

    List<Caution> all() {
        List<Caution> all = new ArrayList<>();
        heat().ifPresent(all::add);
        thunder().ifPresent(all::add);
        all.addAll(wind());
        if (doing(Operation.SPRAY)) {
            all.add(new Caution.Spray());
        }
        if (doing(Operation.SPREAD)) {
            all.add(new Caution.Dust());
        }
        slope().ifPresent(all::add);
        road().ifPresent(all::add);
        return all;
    }

    private boolean doing(Operation operation) {
        return work.stream().anyMatch(item -> item.place().operation() == operation);
    }

    private Optional<Caution> heat() {
        return input.skies().air().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .flatMap(e -> heatAt(e.getKey(), e.getValue()).stream())
                .max(Comparator.comparingDouble(Caution.Heat::heatIndexC))
                .map(Caution.class::cast);
    }

    private Optional<Caution.Heat> heatAt(String property, HourlyAir air) {
        double[] feelsC = IntStream.range(0, air.hours())
                .mapToDouble(h -> HeatIndex.fromDewPointC(air.airTempC()[h], air.dewPointC()[h]))
                .toArray();
        List<Integer> hot = hoursOf(day, air).stream()
                .filter(h -> HeatIndex.Care.of(feelsC[h]) != HeatIndex.Care.LOWER)
                .toList();
        if (hot.isEmpty()) {
            return Optional.empty();
        }
        double most = hot.stream().mapToDouble(h -> feelsC[h]).max().orElseThrow();
        Window when =
                new Window(hourStart(air, hot.get(0)), hourStart(air, hot.get(hot.size() - 1) + 1));
        return Optional.of(
                new Caution.Heat(Literal.of(property), most, when, HeatIndex.Care.of(most)));
    }

    private Optional<Caution> thunder() {
        Map<String, Double> likeliest = new TreeMap<>();
        input.outlook()
                .rain()
                .forEach((property, picture) -> picture.bars().stream()
                        .filter(bar -> bar.window().overlaps(day))
                        .mapToDouble(bar -> bar.chance())
                        .max()
                        .ifPresent(chance -> likeliest.put(Literal.of(property), chance)));
        likeliest.values().removeIf(chance -> chance < THUNDER_FROM);
        return likeliest.values().stream()
                .max(Comparator.naturalOrder())
                .map(chance -> new Caution.Thunder(List.copyOf(likeliest.keySet()), chance));
    }

    private List<Caution> wind() {
        return List.copyOf(work.stream()
                .filter(item -> item.place().operation() == Operation.SPRAY
                        || item.place().operation() == Operation.SPREAD)
                .flatMap(item -> windDuring(item).stream())
                .collect(Collectors.toMap(
                        wind -> List.of(wind.operation(), wind.property()),
                        wind -> wind,
                        DayCautions::together,
                        LinkedHashMap::new))
                .values());
    }

    /** Work of one kind at one property is one caution, from its first hour to its last. */
    private static Caution.Wind together(Caution.Wind a, Caution.Wind b) {
        Window when = new Window(
                a.when().from().isBefore(b.when().from())
                        ? a.when().from()
                        : b.when().from(),
                a.when().to().isAfter(b.when().to()) ? a.when().to() : b.when().to());
        return new Caution.Wind(
                a.operation(),
                a.property(),
                when,
                Math.min(a.leastMps(), b.leastMps()),
                Math.max(a.greatestMps(), b.greatestMps()));
    }

    private Optional<Caution.Wind> windDuring(PlanItem item) {
        return Optional.ofNullable(input.skies().air().get(item.place().property()))
                .flatMap(air -> {
                    var winds = hoursOf(item.work(), air).stream()
                            .mapToDouble(h -> air.windMps()[h])
                            .summaryStatistics();
                    return winds.getCount() == 0
                            ? Optional.empty()
                            : Optional.of(new Caution.Wind(
                                    item.place().operation(),
                                    Literal.of(item.place().property()),
                                    item.work(),
                                    winds.getMin(),
                                    winds.getMax()));
                });
    }

    private Optional<Caution> slope() {
        List<FieldCase> steep = work.stream()
                .map(item -> item.place().field())
                .distinct()
                .flatMap(name -> input.outlook().field(name).stream())
                .map(Outlook.FieldOutlook::item)
                .filter(c -> c.field().ground().slopeFraction() >= STEEP_FROM_FRACTION)
                .toList();
        return steep.stream()
                .map(c -> c.field().ground().slopeFraction())
                .max(Comparator.naturalOrder())
                .map(steepest -> new Caution.Slope(
                        steep.stream().map(c -> Literal.of(c.field().name())).toList(), steepest));
    }

    private Optional<Caution> road() {
        double hours = work.stream().mapToDouble(PlanItem::drivingHours).sum();
        return hours > 0 ? Optional.of(new Caution.Road(hours)) : Optional.empty();
    }

    private static List<Integer> hoursOf(Window window, HourlyAir air) {
        return IntStream.range(0, air.hours())
                .filter(h -> window.overlaps(new Window(hourStart(air, h), hourStart(air, h + 1))))
                .boxed()
                .toList();
    }

    private static Instant hourStart(HourlyAir air, int hour) {
        return air.start().plusSeconds(3600L * hour);
    }
}
