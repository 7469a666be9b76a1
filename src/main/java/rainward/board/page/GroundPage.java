package rainward.board.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import rainward.board.picture.GroundMap;
import rainward.cycle.Outlook;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.queue.model.BetterLater;

/**
 * The fields on the ground.
 *
 * @param frame around it
 * @param maps one a property
 * @param spots how each field is shown, by name
 * @param rows the same as a table
 * @param hidden fields that the search leaves out
 * @param search beginning of the names that are shown
 */
public record GroundPage(
        Frame frame,
        List<GroundMap> maps,
        Map<String, Spot> spots,
        List<Row> rows,
        int hidden,
        String search) {

    /** Fields on one page, so that it stays small enough for a telephone. */
    private static final int MOST_FIELDS = 150;

    /**
     * How a field is shown.
     *
     * @param kind names pattern and colour: waits-low, waits-mid, waits-high, begun, seeded, up,
     *     failed, off
     * @param label inside the field
     * @param title all of it
     * @param path of its page
     */
    public record Spot(String kind, String label, String title, String path) {}

    /** A field as a line. */
    public record Row(
            String field, String path, String property, String area, String state, String ready) {}

    /** What patterns mean, in the order of a season. */
    public record Key(String kind, String words) {}

    public List<Key> keys() {
        return List.of(
                new Key("waits-low", "waits, readiness below 34"),
                new Key("waits-mid", "waits, 34 to 66"),
                new Key("waits-high", "waits, 67 and more"),
                new Key("begun", "under way"),
                new Key("seeded", "seeded"),
                new Key("up", "up"),
                new Key("failed", "failed or thin, waits again"),
                new Key("off", "held or dropped"));
    }

    public static GroundPage of(
            Frame frame, Map<String, String> boundaries, Optional<String> tiles, String search) {
        List<Outlook.FieldOutlook> all = frame.standing().round().stream()
                .flatMap(r -> r.outlook().fields().stream())
                .sorted(Comparator.comparing(
                                (Outlook.FieldOutlook f) -> f.item().field().property())
                        .thenComparing(f -> f.item().field().name()))
                .toList();
        String wanted = search.strip().toLowerCase(Locale.ROOT);
        List<Outlook.FieldOutlook> shown = all.stream()
                .filter(f -> wanted.isEmpty() || matches(f, wanted))
                .limit(MOST_FIELDS)
                .toList();
        Map<String, Spot> spots = shown.stream()
                .collect(Collectors.toMap(
                        f -> f.item().field().name(), f -> spot(frame, f), (a, b) -> a));
        Map<String, List<rainward.farm.Field>> byProperty = new TreeMap<>();
        shown.forEach(f -> byProperty
                .computeIfAbsent(f.item().field().property(), p -> new ArrayList<>())
                .add(f.item().field()));
        List<GroundMap> maps = new ArrayList<>();
        byProperty.forEach(
                (name, fields) -> maps.add(GroundMap.of(name, fields, boundaries, tiles)));
        Function<Outlook.FieldOutlook, Row> row = f -> row(frame, f);
        return new GroundPage(
                frame,
                maps,
                spots,
                shown.stream().map(row).toList(),
                all.size() - shown.size(),
                search.strip());
    }

    private static boolean matches(Outlook.FieldOutlook field, String wanted) {
        return field.item().field().name().toLowerCase(Locale.ROOT).contains(wanted)
                || field.item().field().property().toLowerCase(Locale.ROOT).contains(wanted);
    }

    private static Spot spot(Frame frame, Outlook.FieldOutlook field) {
        String name = field.item().field().name();
        String kind = kind(frame, field);
        String label = kind.startsWith("waits") || kind.equals("failed")
                ? String.valueOf(field.readiness().score())
                : "";
        return new Spot(
                kind,
                (name.split(" ", 2)[0] + " " + label).strip(),
                name + ": " + state(frame, field) + ready(field),
                Frame.fieldPath(name));
    }

    private static String ready(Outlook.FieldOutlook field) {
        return field.item().status().waiting()
                ? ", readiness " + field.readiness().score()
                : "";
    }

    private static boolean off(Frame frame, FieldStatus status) {
        return status.heldAt(frame.now()).isPresent();
    }

    private static String state(Frame frame, Outlook.FieldOutlook field) {
        FieldStatus status = field.item().status();
        boolean kept = frame.standing()
                .round()
                .flatMap(round ->
                        round.outlook().plan().whyLeftOut(field.item().field().name()))
                .filter(BetterLater::saidIn)
                .isPresent();
        return status.state().words()
                + (off(frame, status) ? ", held" : "")
                + (status.pinnedFirst() ? ", pinned" : "")
                + (kept ? ", its seed is kept for a better day" : "");
    }

    private static String kind(Frame frame, Outlook.FieldOutlook field) {
        if (off(frame, field.item().status())) {
            return "off";
        }
        FieldState state = field.item().status().state();
        return state == FieldState.PENDING
                ? Hatching.ofWaiting(field.readiness().score())
                : Hatching.of(state);
    }

    private static Row row(Frame frame, Outlook.FieldOutlook field) {
        return new Row(
                field.item().field().name(),
                Frame.fieldPath(field.item().field().name()),
                field.item().field().property(),
                frame.reader().units().area(field.item().field().areaHa()),
                state(frame, field),
                field.item().status().waiting()
                        ? String.valueOf(field.readiness().score())
                        : "–");
    }
}
