package rainward.brief.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rainward.brief.Brief;
import rainward.brief.Change;
import rainward.brief.ForecastAge;
import rainward.brief.Orders.FieldLine;
import rainward.brief.Orders.StageLine;
import rainward.farm.Window;

/** The order, by field and by person. */
public final class OrderWords {

    private final Brief brief;
    private final Reader reader;
    private final Window day;

    public OrderWords(Brief brief, Reader reader) {
        this.brief = brief;
        this.reader = reader;
        this.day = reader.clock().wholeDay(brief.heading().day());
    }

    /** For instance {@code 71%}; where the forecast is old, that is said. */
    public String chance(double chance) {
        return brief.footing().trust() == ForecastAge.Trust.STALE
                ? Reader.percent(chance) + " (old)"
                : Reader.percent(chance);
    }

    /** When a stage is done; other days than the brief's are named. */
    public String when(StageLine stage) {
        return stage.work().overlaps(day)
                ? reader.clock().span(stage.work())
                : reader.clock().daySpan(stage.work());
    }

    /** What is done, for instance {@code till} or {@code seed turnip and rape}. */
    public static String what(StageLine stage, FieldLine line) {
        String part = stage.shareFraction() < 1
                ? ", " + Reader.percent(stage.shareFraction()) + " of the field"
                : "";
        return switch (stage.operation()) {
            case SEED -> stage.stage() + line.sown().map(s -> ": " + s.mix()).orElse("") + part;
            default -> stage.stage() + part;
        };
    }

    public static String who(StageLine stage) {
        return stage.hands().person() + ", " + stage.hands().machine();
    }

    public String place(FieldLine line) {
        return line.place().property() + ", " + reader.units().area(line.place().areaHa());
    }

    /** One task of one person today. */
    public record Task(StageLine stage, FieldLine line) {}

    /** Today's tasks by person, in order of time. */
    public Map<String, List<Task>> byPerson() {
        Map<String, List<Task>> tasks = new TreeMap<>();
        for (FieldLine line : brief.orders().today()) {
            for (StageLine stage : line.stages()) {
                if (stage.work().overlaps(day)) {
                    tasks.computeIfAbsent(stage.hands().person(), p -> new ArrayList<>())
                            .add(new Task(stage, line));
                }
            }
        }
        tasks.values()
                .forEach(list -> list.sort(
                        Comparator.comparing(task -> task.stage().work().from())));
        return tasks;
    }

    /** For instance {@code till Mill 3 (Mill Road), Blue tractor, 20 min to get there}. */
    public static String task(Task task) {
        long roadMinutes = Math.round(task.stage().drivingHours() * 60);
        long settingMinutes = Math.round(task.stage().settingHours() * 60);
        String road = roadMinutes > 0 ? ", " + roadMinutes + " min to get there" : "";
        String setting = settingMinutes > 0 ? ", " + settingMinutes + " min to change the mix" : "";
        return what(task.stage(), task.line()) + ", " + task.line().place().field() + " ("
                + task.line().place().property() + "), " + task.stage().hands().machine() + road
                + setting;
    }

    /** The first stage and, where it is another, the seeding of a field of the days after. */
    public String later(FieldLine line) {
        StageLine first = line.stages().get(0);
        StageLine last = line.stages().get(line.stages().size() - 1);
        String start = first.stage() + " " + reader.clock().dayTime(first.work().from());
        String end = last.stage() + " " + reader.clock().dayTime(last.work().from());
        String chance = line.sown()
                .map(s -> ", stand " + chance(s.chance()) + (s.fallBack() ? ", " + s.mix() : ""))
                .orElse("");
        return place(line) + ": " + (first.equals(last) ? start : start + ", " + end) + chance;
    }

    /** Fields that are not in the order, for one reason. */
    public record LeftOut(String fields, String why) {}

    /** Fields that are not in the order; those of the same reason together. */
    public List<LeftOut> leftOut() {
        Map<String, List<String>> alike = new LinkedHashMap<>();
        brief.orders()
                .leftOut()
                .forEach(left -> alike.computeIfAbsent(left.why(), why -> new ArrayList<>())
                        .add(left.place().field() + " ("
                                + reader.units().area(left.place().areaHa()) + ")"));
        List<LeftOut> all = new ArrayList<>();
        alike.forEach((why, fields) -> all.add(new LeftOut(Reader.and(fields), why)));
        return all;
    }

    /**
     * What is different from the brief before: fields that are seeded in one line, then the rest.
     */
    public List<String> changes() {
        List<Change> seeded = brief.changes().stream()
                .filter(change -> change.kind() == Change.Kind.SEEDED)
                .toList();
        List<String> lines = new ArrayList<>();
        if (seeded.size() > 1) {
            lines.add("Done, seed is in: "
                    + Reader.and(seeded.stream().map(Change::field).toList()));
        }
        brief.changes().stream()
                .filter(change -> seeded.size() < 2 || !seeded.contains(change))
                .map(this::change)
                .forEach(lines::add);
        return lines;
    }

    private String change(Change change) {
        String times = change.before()
                .flatMap(was -> change.after()
                        .map(is -> ", "
                                + reader.clock().dayTime(is) + " instead of "
                                + reader.clock().dayTime(was)))
                .or(() -> change.after().map(is -> ", " + reader.clock().dayTime(is)))
                .orElse("");
        boolean sameTime = change.kind() == Change.Kind.OTHER_MIX;
        String why = change.why().isEmpty() ? "" : " (" + change.why() + ")";
        return change.field() + ": " + kind(change.kind()) + (sameTime ? "" : times) + why;
    }

    private static String kind(Change.Kind kind) {
        return switch (kind) {
            case SEEDED -> "done";
            case ADDED -> "new in the order";
            case EARLIER -> "earlier";
            case LATER -> "later";
            case OTHER_MIX -> "another mix";
            case TAKEN_OUT -> "out of the order";
        };
    }
}
