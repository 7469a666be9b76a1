package rainward.input.load;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import rainward.farm.Operation;
import rainward.farm.UnitSystem;
import rainward.input.Caution;
import rainward.input.Gap;
import rainward.input.load.LoadSheet.Line;
import rainward.input.load.LoadSheet.MachineSheet;
import rainward.input.load.LoadSheet.Total;
import rainward.input.seed.Fill;

/** A load sheet as plain text, 72 columns wide, in the units of the person. */
public final class LoadText {
    private static final int WIDTH = 72;
    private static final String INDENT = " ".repeat(12);

    private final UnitSystem units;
    private final LoadWords words;
    private final List<String> out = new ArrayList<>();

    private LoadText(UnitSystem units, ZoneId zone) {
        this.units = units;
        words = new LoadWords(units, zone);
    }

    /**
     * Writes a sheet.
     *
     * @param zone of the farm's days
     */
    public static String of(LoadSheet sheet, UnitSystem units, ZoneId zone) {
        LoadText text = new LoadText(units, zone);
        text.write(sheet);
        return String.join("\n", text.out) + "\n";
    }

    private void write(LoadSheet sheet) {
        put("LOAD SHEET, " + LoadWords.day(sheet.day()), "");
        if (sheet.machines().isEmpty()) {
            put("No work is planned for this day.", "");
        }
        sheet.machines().forEach(this::machine);
        if (!sheet.totals().isEmpty()) {
            head("IN ALL");
            sheet.totals().forEach(this::total);
        }
        if (!sheet.gaps().isEmpty()) {
            head("NOT KNOWN");
            sheet.gaps().stream().map(Gap::text).forEach(gap -> put("  " + gap, "    "));
        }
        if (!sheet.machines().isEmpty()) {
            head("MIND");
            cautions(sheet).forEach(caution -> put("  " + caution.text(), "    "));
        }
    }

    private void head(String title) {
        out.add("");
        put(title, "");
    }

    private void machine(MachineSheet machine) {
        head(machine.machine().toUpperCase(Locale.ROOT));
        machine.lines().forEach(this::line);
        machine.fills().forEach(this::fill);
        LoadWords.allLoads(machine).ifPresent(all -> put("  " + all, ""));
    }

    private void line(Line line) {
        String what = line.item().sowing().map(s -> " " + s.mix()).orElse("");
        put(
                String.format("  %-8s  ", words.hour(line.item().work().from()))
                        + line.item().place().field() + " ("
                        + line.item().place().property()
                        + "), " + line.item().place().stage() + what + ", "
                        + units.area(line.areaHa()) + ", " + line.item().hands().person(),
                INDENT);
        if (!line.amounts().isEmpty()) {
            put(INDENT + words.amounts(line), INDENT);
        }
        line.setting()
                .ifPresent(setting -> put(
                        String.format(
                                Locale.ROOT,
                                INDENT + "start at setting %.1f: %s",
                                setting.settingIndex(),
                                setting.sureness().words()),
                        INDENT));
    }

    private void fill(Fill fill) {
        String where = fill.afterHa() == 0
                ? "at the gate of " + fill.field()
                : "in " + fill.field() + " after " + units.area(fill.afterHa());
        put(
                "  fill " + where + ": " + words.mass(fill.addKg()) + " " + fill.mix()
                        + (fill.perBoxKg().size() > 1 ? " (" + words.boxes(fill) + ")" : "")
                        + LoadWords.notes(fill, units).stream()
                                .map(", "::concat)
                                .collect(Collectors.joining()),
                "       ");
    }

    private void total(Total total) {
        String pull =
                total.pull().map(bags -> "; take " + words.pull(bags, " and ")).orElse("");
        put(
                "  " + total.what() + ": " + words.mass(total.needKg())
                        + (total.spareKg() > 0 ? ", spare " + words.mass(total.spareKg()) : "")
                        + pull,
                "    ");
    }

    /** Cautions of the work on a sheet. */
    public static Set<Caution> cautions(LoadSheet sheet) {
        Set<Caution> all = EnumSet.noneOf(Caution.class);
        sheet.machines().stream()
                .flatMap(machine -> machine.lines().stream())
                .map(line -> line.item().place().operation())
                .forEach(operation -> all.addAll(cautions(operation)));
        return all;
    }

    private static Set<Caution> cautions(Operation operation) {
        return switch (operation) {
            case SPREAD -> EnumSet.of(Caution.LIME_DUST, Caution.SEED_CONTACT);
            case SEED -> EnumSet.of(Caution.SEED_CONTACT, Caution.TREATED_SEED, Caution.PLANT_BACK);
            case SPRAY -> EnumSet.of(Caution.PLANT_BACK);
            case MOW, DISK, TILL, FIRM -> EnumSet.noneOf(Caution.class);
        };
    }

    /** Adds a line, broken at blanks where it is too wide. */
    private void put(String text, String hanging) {
        String rest = text;
        while (rest.length() > WIDTH) {
            int blank = rest.lastIndexOf(' ', WIDTH);
            // A word wider than the sheet is cut.
            int cut = blank > hanging.length() ? blank : WIDTH;
            out.add(rest.substring(0, cut).stripTrailing());
            rest = hanging + rest.substring(cut).stripLeading();
        }
        out.add(rest);
    }
}
