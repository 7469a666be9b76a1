package rainward.board.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import rainward.brief.words.GroundWords;
import rainward.cycle.Outlook;
import rainward.farm.FieldState;

/**
 * How far the season has come.
 *
 * @param frame around it
 * @param lines in words
 * @param parts ground by state, along one bar
 * @param rows by property
 */
public record SeasonPage(Frame frame, List<String> lines, List<Part> parts, List<Row> rows) {

    /** Ground of one state. */
    public record Part(String kind, String words, String x, String width) {}

    /** A property. */
    public record Row(String property, String seeded, String left, String up, String failed) {}

    public static SeasonPage of(Frame frame) {
        return frame.standing()
                .round()
                .map(round -> new SeasonPage(
                        frame,
                        new GroundWords(frame.reader())
                                .season(round.brief().ahead().season()),
                        parts(frame, round.outlook()),
                        rows(frame, round.outlook())))
                .orElseGet(() -> new SeasonPage(frame, List.of(), List.of(), List.of()));
    }

    private static List<Part> parts(Frame frame, Outlook outlook) {
        Map<FieldState, Double> haByState = new LinkedHashMap<>();
        for (FieldState state : List.of(
                FieldState.UP,
                FieldState.SEEDED,
                FieldState.IN_WORK,
                FieldState.FAILED,
                FieldState.PENDING,
                FieldState.DROPPED)) {
            haByState.put(state, areaHa(outlook, null, state));
        }
        double allHa = haByState.values().stream().mapToDouble(ha -> ha).sum();
        List<Part> parts = new ArrayList<>();
        double before = 0;
        for (var entry : haByState.entrySet()) {
            if (entry.getValue() > 0) {
                parts.add(new Part(
                        Hatching.of(entry.getKey()),
                        entry.getKey().words() + ": "
                                + frame.reader().units().area(entry.getValue()),
                        percent(before / allHa),
                        percent(entry.getValue() / allHa)));
            }
            before += entry.getValue();
        }
        return parts;
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.2f%%", 100 * share);
    }

    private static double areaHa(
            Outlook outlook, @org.jspecify.annotations.Nullable String property, FieldState state) {
        return outlook.fields().stream()
                .map(Outlook.FieldOutlook::item)
                .filter(item -> property == null || item.field().property().equals(property))
                .filter(item -> item.status().state() == state)
                .mapToDouble(item -> item.field().areaHa())
                .sum();
    }

    private static List<Row> rows(Frame frame, Outlook outlook) {
        Map<String, Row> rows = new TreeMap<>();
        outlook.fields().stream()
                .map(f -> f.item().field().property())
                .distinct()
                .forEach(name -> rows.put(name, row(frame, outlook, name)));
        return List.copyOf(rows.values());
    }

    private static Row row(Frame frame, Outlook outlook, String name) {
        double upHa = areaHa(outlook, name, FieldState.UP);
        double seededHa = areaHa(outlook, name, FieldState.SEEDED) + upHa;
        double failedHa = areaHa(outlook, name, FieldState.FAILED);
        double leftHa = areaHa(outlook, name, FieldState.PENDING)
                + areaHa(outlook, name, FieldState.IN_WORK)
                + failedHa;
        var units = frame.reader().units();
        return new Row(
                name,
                units.area(seededHa),
                units.area(leftHa),
                units.area(upHa),
                units.area(failedHa));
    }
}
