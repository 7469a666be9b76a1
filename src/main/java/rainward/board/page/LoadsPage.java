package rainward.board.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import rainward.board.house.Supply;
import rainward.brief.words.Reader;
import rainward.input.Gap;
import rainward.input.load.LoadSheet;
import rainward.input.load.LoadWords;
import rainward.input.seed.Fill;

/**
 * What goes on the trucks, and what is in the shed.
 *
 * @param frame around it
 * @param totals all of each thing
 * @param machines load by load
 * @param gaps what cannot be said, with the remedy
 * @param shed what is there
 */
public record LoadsPage(
        Frame frame,
        List<Total> totals,
        List<Machine> machines,
        List<String> gaps,
        List<Supply> shed) {

    /** All of one thing. */
    public record Total(String what, String load, String words) {}

    /** One machine's day. */
    public record Machine(String name, List<Line> lines, List<String> fills) {}

    /** One piece of work. */
    public record Line(String when, String field, String path, String words) {}

    public static LoadsPage of(Frame frame, LoadSheet sheet, List<Supply> shed) {
        return new LoadsPage(
                frame,
                sheet.totals().stream().map(t -> total(frame.reader(), t)).toList(),
                sheet.machines().stream()
                        .map(m -> machine(frame.reader(), m))
                        .filter(m -> !m.lines().isEmpty())
                        .toList(),
                gaps(sheet.gaps()),
                shed);
    }

    /** Gaps of many fields that lack the same are told once. */
    private static List<String> gaps(List<Gap> gaps) {
        Map<String, List<String>> alike = new LinkedHashMap<>();
        gaps.forEach(gap -> alike.computeIfAbsent(
                        gap.missing() + " – " + forPages(gap.remedy()), key -> new ArrayList<>())
                .add(gap.about()));
        return alike.entrySet().stream()
                .map(e -> Reader.and(e.getValue()) + ": " + e.getKey())
                .toList();
    }

    /** What is to be typed as a command has its form on this or another page. */
    private static String forPages(String remedy) {
        return remedy.replaceFirst("^count it: rainward .*", "count it, below")
                .replaceFirst(": rainward .*", " in the office");
    }

    private static Total total(Reader reader, LoadSheet.Total total) {
        String need = reader.units().mass(total.needKg() + total.spareKg());
        String spare = total.spareKg() > 0
                ? "of it " + reader.units().mass(total.spareKg()) + " to spare"
                : "";
        return new Total(
                total.what(),
                need,
                total.pull()
                        .map(pull -> Reader.count(pull.wholeBags(), "whole bag", "whole bags")
                                + (pull.openedKg() > 0
                                        ? " and " + reader.units().mass(pull.openedKg()) + " loose"
                                        : "")
                                + (spare.isEmpty() ? "" : ", " + spare)
                                + (pull.shortKg() > 0
                                        ? "; the shed lacks " + reader.units().mass(pull.shortKg())
                                        : ""))
                        .orElse(spare));
    }

    private static Machine machine(Reader reader, LoadSheet.MachineSheet machine) {
        return new Machine(
                machine.machine(),
                machine.lines().stream()
                        .filter(line ->
                                !line.amounts().isEmpty() || line.setting().isPresent())
                        .map(line -> line(reader, line))
                        .toList(),
                machine.fills().stream().map(fill -> fill(reader, fill)).toList());
    }

    private static Line line(Reader reader, LoadSheet.Line line) {
        List<String> words = new ArrayList<>();
        words.add(line.item().place().stage() + ", " + reader.units().area(line.areaHa()) + ", "
                + line.item().hands().person());
        line.amounts().forEach(a -> words.add(a.what() + " " + reader.units().mass(a.massKg())));
        if (line.loads() > 0) {
            words.add(Reader.count(line.loads(), "load", "loads"));
        }
        line.setting()
                .ifPresent(s -> words.add(String.format(
                        Locale.ROOT,
                        "start at setting %.1f (%s)",
                        s.settingIndex(),
                        s.sureness().words())));
        String field = line.item().place().field();
        return new Line(
                reader.clock().time(line.item().work().from()),
                field,
                Frame.fieldPath(field),
                String.join("; ", words));
    }

    private static String fill(Reader reader, Fill fill) {
        List<String> boxes = fill.perBoxKg().stream().map(reader.units()::mass).toList();
        String where = fill.afterHa() > 0
                ? "after " + reader.units().area(fill.afterHa()) + " of " + fill.field()
                : "at the gate of " + fill.field();
        return "Fill " + where + ": " + fill.mix() + ", " + reader.units().mass(fill.addKg())
                + (boxes.size() > 1 ? " (" + String.join(", ", boxes) + ")" : "")
                + LoadWords.notes(fill, reader.units()).stream()
                        .map("; "::concat)
                        .collect(Collectors.joining());
    }
}
