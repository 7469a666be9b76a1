package rainward.brief;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Supplier;
import rainward.window.StormWindow;

/** Named alerts of the invented crew. */
public final class AlertDays {

    private AlertDays() {}

    /** By name, in order of name. */
    public static Map<String, Supplier<Alert>> all() {
        Map<String, Supplier<Alert>> alerts = new TreeMap<>();
        alerts.put("window-opens", AlertDays::opened);
        alerts.put("window-changes", AlertDays::changed);
        alerts.put("window-closes", AlertDays::closed);
        alerts.put("window-hostile", AlertDays::hostile);
        alerts.put("watch-issued", AlertDays::watchIssued);
        alerts.put("watch-over", AlertDays::watchOver);
        return alerts;
    }

    /** One of them. */
    public static Alert alert(String name) {
        return Optional.ofNullable(all().get(name)).map(Supplier::get).orElseThrow();
    }

    private static DaySketch friday() {
        return new DaySketch(BriefDays.THURSDAY.plusDays(1));
    }

    private static Alert.Origin origin() {
        return new Alert.Origin(SampleCrew.FARM, SampleCrew.DETROIT, friday().at(0, "05:40"));
    }

    /** First word of a window. */
    public static Alert opened() {
        return Alert.of(
                origin(),
                new Alert.WindowNews(BriefDays.window(friday()), Alert.Step.OPENED, 1),
                "the chance rose from 74% to 91%, and two fields there can still be seeded");
    }

    /** Earlier than thought, and nothing fits any more. */
    public static Alert changed() {
        StormWindow was = BriefDays.window(friday());
        var now = new StormWindow(
                was.id(),
                was.properties(),
                0.96,
                new StormWindow.Arrival(
                        friday().at(0, "18:00"), friday().at(0, "21:00"), friday().at(1, "03:00")),
                was.amount(),
                0.02,
                List.of(),
                List.of("Mill 5", "Otter Flat", "Otter Knoll"));
        return Alert.of(
                origin(),
                new Alert.WindowNews(now, Alert.Step.CHANGED, 2),
                "the rain comes 17 hours earlier");
    }

    /** The rain is there. */
    public static Alert closed() {
        return Alert.of(
                origin(),
                new Alert.WindowNews(BriefDays.window(friday()), Alert.Step.CLOSED, 3),
                "the rain has come");
    }

    /** Names that try to break headers and pages. */
    public static Alert hostile() {
        StormWindow was = BriefDays.window(friday());
        var now = new StormWindow(
                was.id(),
                new TreeSet<>(List.of("Mill\r\nBcc: all@example.org", "<b>Otter\u202E</b>")),
                was.chance(),
                was.arrival(),
                was.amount(),
                was.hardRainChance(),
                List.of(new StormWindow.Fit(
                        "<script>x</script>",
                        friday().at(0, "06:40"),
                        friday().at(1, "05:20"),
                        0.7)),
                List.of("a\u2028b"));
        return Alert.of(
                origin(), new Alert.WindowNews(now, Alert.Step.OPENED, 1), "why\r\nnot & <i>");
    }

    /** A watch of the public service. */
    public static Alert watchIssued() {
        return Alert.of(
                origin(),
                new Alert.PublicNews(
                        BriefDays.watch(friday()),
                        Alert.Step.OPENED,
                        1,
                        "urn:oid:2.49.0.1.840.0.1"),
                "issued by the weather service for two of your farms");
    }

    /** The watch is over. */
    public static Alert watchOver() {
        return Alert.of(
                origin(),
                new Alert.PublicNews(
                        BriefDays.watch(friday()),
                        Alert.Step.CLOSED,
                        2,
                        "urn:oid:2.49.0.1.840.0.1"),
                "ended by the weather service");
    }
}
