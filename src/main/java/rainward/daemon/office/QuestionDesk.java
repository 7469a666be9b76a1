package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.cycle.Cycle;
import rainward.cycle.ground.SoilWord;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.input.load.LoadSheet;
import rainward.queue.problem.PlanItem;
import rainward.store.Books;
import rainward.weather.rain.RainObservation;
import rainward.weather.rain.RainOrigin;

/** Where it is put in words what only a person can answer, each with the way to answer it. */
final class QuestionDesk {

    /** A word on the soil holds about so long: common practice, no source. */
    private static final Duration WORD_HOLDS = Duration.ofDays(7);

    private static final Duration GAUGE_LOOKED_AT = Duration.ofDays(3);

    /** Two readings of one rain that differ by more than this and by half are asked about [mm]. */
    private static final double WORTH_ASKING_MM = 6;

    private final Office office;

    QuestionDesk(Office office) {
        this.office = office;
    }

    List<String> all(Books books, Cycle.Result result, LoadSheet sheet) {
        List<String> all = new ArrayList<>();
        sheet.gaps().forEach(gap -> all.add(gap.text()));
        soil(books, result).ifPresent(all::add);
        all.addAll(gauges(books, result.outlook().asOf()));
        return all;
    }

    /** The field that is seeded first, where nobody has dug there lately. */
    private Optional<String> soil(Books books, Cycle.Result result) {
        Instant since = result.outlook().asOf().minus(WORD_HOLDS);
        var words = books.soilWords().all();
        return result.outlook().plan().items().stream()
                .filter(item -> item.sowing().isPresent())
                .min(Comparator.comparing(item -> item.work().from()))
                .map(PlanItem::place)
                .filter(place -> words.getOrDefault(place.field(), List.of()).stream()
                        .map(SoilWord::at)
                        .noneMatch(at -> at.isAfter(since)))
                .map(place -> place.field() + ": how is the soil at seed depth? It is seeded "
                        + "first, and nobody has dug there in a week. Answer with: rainward soil \""
                        + place.field() + "\" dry, moist or wet");
    }

    private List<String> gauges(Books books, Instant now) {
        Window days = new Window(now.minus(GAUGE_LOOKED_AT), now);
        return office.roster().properties().values().stream()
                .flatMap(property ->
                        gauge(property, books.rain().newest(property.name(), days)).stream())
                .toList();
    }

    /** The newest reading of the gauge that another source contradicts. */
    private Optional<String> gauge(Property property, List<RainObservation> all) {
        return all.stream()
                .filter(QuestionDesk::isGauge)
                .flatMap(own -> others(own, all).entrySet().stream()
                        .filter(other -> conflict(own.amountMm(), other.getValue()))
                        .map(other -> asked(property, own, other)))
                .reduce((first, second) -> second);
    }

    private static boolean isGauge(RainObservation rain) {
        return rain.source().equals(RainOrigin.GAUGE_SOURCE);
    }

    /** What each other source says of the hours of a reading, where it knows all of them [mm]. */
    private static Map<String, Double> others(RainObservation own, List<RainObservation> all) {
        Map<String, Double> amountMm = new TreeMap<>();
        Map<String, Duration> known = new TreeMap<>();
        all.stream()
                .filter(rain -> !isGauge(rain) && within(rain.window(), own.window()))
                .forEach(rain -> {
                    amountMm.merge(rain.source(), rain.amountMm(), Double::sum);
                    known.merge(rain.source(), rain.window().length(), Duration::plus);
                });
        amountMm.keySet()
                .removeIf(source -> known.getOrDefault(source, Duration.ZERO)
                                .compareTo(own.window().length())
                        < 0);
        return amountMm;
    }

    private static boolean within(Window inner, Window outer) {
        return !inner.from().isBefore(outer.from()) && !inner.to().isAfter(outer.to());
    }

    private static boolean conflict(double a, double b) {
        double apart = Math.abs(a - b);
        return apart > WORTH_ASKING_MM && apart > Math.max(a, b) / 2;
    }

    private String asked(Property property, RainObservation own, Map.Entry<String, Double> other) {
        var units = office.settings().farm().units();
        return property.name() + ": the gauge says " + units.rain(own.amountMm()) + ", "
                + other.getKey() + " says " + units.rain(other.getValue())
                + " for the same hours. Is the gauge right? If not, tell it again with: rainward"
                + " rain \"" + property.name() + "\"";
    }
}
