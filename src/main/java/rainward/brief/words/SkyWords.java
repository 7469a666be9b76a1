package rainward.brief.words;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rainward.brief.Brief;
import rainward.brief.LocalAlert;
import rainward.brief.RainPanel;
import rainward.cycle.RainPicture.Bar;
import rainward.window.StormWindow;

/** Rain, windows and public alerts. */
public final class SkyWords {

    /** From here on the rain is told by its first such six hours. */
    private static final double LIKELY_FROM = 0.5;

    /** From here on a burst that washes out bare ground is worth a word. */
    public static final double HARD_FROM = 0.05;

    private final Reader reader;

    public SkyWords(Reader reader) {
        this.reader = reader;
    }

    /** Farms of the same rain, day by day where it is not dry. */
    public record Rain(String properties, String words, List<String> byDay) {}

    /** Rain of all farms; those of the same words together. */
    public List<Rain> rain(List<RainPanel> panels) {
        Map<String, List<RainPanel>> alike = panels.stream()
                .collect(
                        Collectors.groupingBy(this::rain, LinkedHashMap::new, Collectors.toList()));
        List<Rain> all = new ArrayList<>();
        alike.forEach((words, same) -> all.add(new Rain(
                Reader.and(same.stream().map(RainPanel::property).toList()),
                words,
                same.get(0).isDry() ? List.of() : byDay(same.get(0)))));
        return all;
    }

    /** The rain of a property in a sentence or two. */
    public String rain(RainPanel panel) {
        Optional<Bar> likeliest = panel.likeliest();
        if (likeliest.isEmpty()) {
            return "no forecast";
        }
        if (panel.isDry()) {
            Bar end = panel.bars().get(panel.bars().size() - 1);
            return "dry to " + reader.clock().weekday(end.window().from())
                    + mostWhenDry(likeliest.get().chance());
        }
        Bar told = panel.bars().stream()
                .filter(bar -> bar.chance() >= LIKELY_FROM)
                .findFirst()
                .orElse(likeliest.get());
        return told(told) + before(panel, told) + hard(panel);
    }

    private static String mostWhenDry(double chance) {
        String most = Reader.percent(chance);
        return most.equals(Reader.percent(0)) ? "" : ", at most " + most;
    }

    /** The likeliest rain of the likeliest place, for the top of the brief. */
    public String inShort(RainPanel panel) {
        if (panel.isDry()) {
            return "dry everywhere as far as the forecast goes";
        }
        Bar bar = panel.likeliest().orElseThrow();
        return Reader.percent(bar.chance()) + " " + reader.clock().daySpan(bar.window()) + " at "
                + panel.property() + ", the likeliest place";
    }

    private String told(Bar bar) {
        return Reader.percent(bar.chance()) + " " + reader.clock().daySpan(bar.window()) + ", "
                + (reader.units().roundsToDry(bar.meanMm())
                        ? "less than " + reader.units().leastRoughRain()
                        : reader.units().roughRain(bar.meanMm()))
                + " expected, " + oneInTen(bar.p90Mm());
    }

    /** Rain over nothing is no news, so that is said from the other side. */
    private String oneInTen(double p90Mm) {
        return reader.units().roundsToDry(p90Mm)
                ? "nine times in ten less than " + reader.units().leastRoughRain()
                : "one time in ten over " + reader.units().roughRain(p90Mm);
    }

    private static String before(RainPanel panel, Bar told) {
        return panel.bars().stream()
                .takeWhile(bar -> !bar.equals(told))
                .map(Bar::chance)
                .max(Double::compare)
                .map(most -> "; before that at most " + Reader.percent(most))
                .orElse("");
    }

    private String hard(RainPanel panel) {
        return panel.bars().stream()
                .max((a, b) -> Double.compare(a.hardRainChance(), b.hardRainChance()))
                .filter(bar -> bar.hardRainChance() >= HARD_FROM)
                .map(bar -> "; hard enough to wash out: " + Reader.percent(bar.hardRainChance())
                        + " " + reader.clock().daySpan(bar.window()))
                .orElse("");
    }

    /** Highest chance of any six hours of a day, day by day, for instance {@code Thu 5%}. */
    private List<String> byDay(RainPanel panel) {
        Map<LocalDate, Double> most = new TreeMap<>();
        panel.bars()
                .forEach(bar -> most.merge(
                        reader.clock().date(bar.window().from()), bar.chance(), Math::max));
        List<String> days = new ArrayList<>();
        most.forEach((date, chance) ->
                days.add(reader.clock().day(date).substring(0, 3) + " " + Reader.percent(chance)));
        return days;
    }

    /** An open window in a few sentences. */
    public List<String> window(StormWindow window) {
        List<String> lines = new ArrayList<>();
        lines.add(Reader.and(List.copyOf(window.properties())) + ": useful rain "
                + Reader.percent(window.chance()) + " likely.");
        lines.add("Comes " + arrival(window) + ".");
        lines.add("Brings " + amount(window) + ".");
        return lines;
    }

    public String arrival(StormWindow window) {
        StormWindow.Arrival arrival = window.arrival();
        return "about " + reader.clock().dayTime(arrival.p50()) + ", one time in ten before "
                + reader.clock().dayTime(arrival.p10()) + ", one time in ten after "
                + reader.clock().dayTime(arrival.p90());
    }

    public String amount(StormWindow window) {
        StormWindow.Amount amount = window.amount();
        return "about " + reader.units().roughRain(amount.p50Mm()) + ", mostly "
                + reader.rainRange(amount.p10Mm(), amount.p90Mm())
                + (window.hardRainChance() >= HARD_FROM
                        ? "; hard enough to wash out: " + Reader.percent(window.hardRainChance())
                        : "");
    }

    /** A field that fits before the rain. */
    public String fit(StormWindow.Fit fit) {
        return fit.field() + ": planned " + reader.clock().dayTime(fit.plannedStart())
                + ", start at the latest " + reader.clock().dayTime(fit.lastSafeStart())
                + ", stand " + Reader.percent(fit.chance());
    }

    /** A public alert in a line. */
    public String alert(LocalAlert alert) {
        String end = alert.alert()
                .times()
                .endsAt()
                .map(at -> " until " + reader.clock().dayTime(at))
                .orElse("");
        return alert.alert().message().event() + " from "
                + reader.clock().dayTime(alert.alert().times().startsAt()) + end + ": "
                + Reader.and(alert.properties());
    }

    /** All windows and alerts, a line each; for the top of the brief. */
    public List<String> urgent(Brief.Sky sky) {
        List<String> lines = new ArrayList<>();
        sky.alerts().forEach(alert -> lines.add(alert(alert) + "."));
        sky.windows().forEach(w -> lines.add("Storm window, " + String.join(" ", window(w))));
        return lines;
    }
}
