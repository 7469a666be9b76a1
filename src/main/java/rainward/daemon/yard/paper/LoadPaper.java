package rainward.daemon.yard.paper;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import rainward.farm.UnitSystem;
import rainward.input.Gap;
import rainward.input.load.LoadSheet;
import rainward.input.load.LoadText;
import rainward.input.load.LoadWords;
import rainward.input.seed.Fill;
import rainward.input.seeder.StartingSetting;

/** The load sheet as it hangs in the truck: boxes to tick, one table a machine. */
public final class LoadPaper {

    private final UnitSystem units;
    private final LoadWords words;

    private LoadPaper(UnitSystem units, ZoneId zone) {
        this.units = units;
        words = new LoadWords(units, zone);
    }

    /** The sheet as PDF. */
    public static byte[] of(LoadSheet sheet, String farm, UnitSystem units, ZonedDateTime made) {
        LoadPaper paper = new LoadPaper(units, made.getZone());
        return paper.write(sheet, farm, made);
    }

    private byte[] write(LoadSheet sheet, String farm, ZonedDateTime made) {
        String title = "Load sheet, " + LoadWords.day(sheet.day());
        Paper paper = new Paper(farm + ": " + title, made);
        paper.title(title)
                .small(farm + ", made " + LoadWords.day(made) + " " + words.hour(made.toInstant()));
        if (sheet.machines().isEmpty()) {
            paper.text("No work is planned for this day.");
        }
        if (!sheet.totals().isEmpty()) {
            paper.heading("On the trucks")
                    .table(
                            new float[] {0.6f, 4, 2.4f, 2.2f, 5},
                            List.of("", "what", "goes on", "spare", "take"),
                            sheet.totals().stream().map(this::total).toList());
        }
        sheet.machines().forEach(machine -> machine(paper, machine));
        if (!sheet.gaps().isEmpty()) {
            paper.heading("Not known");
            sheet.gaps().stream().map(Gap::text).forEach(paper::text);
        }
        if (!sheet.machines().isEmpty()) {
            paper.heading("Mind");
            LoadText.cautions(sheet).forEach(caution -> paper.small(caution.text()));
        }
        return paper.bytes();
    }

    private List<String> total(LoadSheet.Total total) {
        return List.of(
                "[  ]",
                total.what(),
                words.mass(total.needKg()),
                total.spareKg() > 0 ? words.mass(total.spareKg()) : "",
                total.pull().map(bags -> words.pull(bags, " + ")).orElse("by weight"));
    }

    private void machine(Paper paper, LoadSheet.MachineSheet machine) {
        String people = machine.lines().stream()
                .map(line -> line.item().hands().person())
                .distinct()
                .collect(Collectors.joining(", "));
        paper.heading(machine.machine() + " (" + people + ")");
        paper.table(
                new float[] {1.1f, 3.6f, 2, 1.4f, 6.4f},
                List.of("from", "field", "stage", "area", "what goes on"),
                machine.lines().stream().map(this::line).toList());
        machine.lines().stream()
                .flatMap(line -> line.setting().map(setting -> start(line, setting)).stream())
                .distinct()
                .forEach(paper::text);
        LoadWords.allLoads(machine).ifPresent(all -> paper.text(all + "."));
        if (!machine.fills().isEmpty()) {
            paper.table(
                    new float[] {0.6f, 3.5f, 2.6f, 1.5f, 3, 4},
                    List.of("", "fill", "mix", "in all", "boxes, left to right", "mind"),
                    machine.fills().stream().map(this::fill).toList());
        }
    }

    private static String start(LoadSheet.Line line, StartingSetting setting) {
        return String.format(
                Locale.ROOT,
                "Start at setting %.1f for %s: %s.",
                setting.settingIndex(),
                line.item().sowing().orElseThrow().mix(),
                setting.sureness().words());
    }

    private List<String> line(LoadSheet.Line line) {
        String mix = line.item().sowing().map(sowing -> sowing.mix() + ": ").orElse("");
        return List.of(
                words.hour(line.item().work().from()),
                line.item().place().field() + ", " + line.item().place().property(),
                line.item().place().stage(),
                units.area(line.areaHa()),
                mix + words.amounts(line));
    }

    private List<String> fill(Fill fill) {
        List<String> row = new ArrayList<>();
        row.add("[  ]");
        row.add(
                fill.afterHa() == 0
                        ? "gate of " + fill.field()
                        : fill.field() + " after " + units.area(fill.afterHa()));
        row.add(fill.mix());
        row.add(words.mass(fill.addKg()));
        row.add(words.boxes(fill));
        row.add(String.join("; ", LoadWords.notes(fill, units)));
        return row;
    }
}
