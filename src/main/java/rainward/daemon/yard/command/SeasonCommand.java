package rainward.daemon.yard.command;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.command.Sheets;
import rainward.daemon.office.Office;
import rainward.daemon.yard.LoadDesk;
import rainward.daemon.yard.season.SeasonDesk;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.queue.problem.Plan;

/** Says how the season goes. */
@Command(
        name = "season",
        description = {
            "Ground done and left by mix, the pace, the chance to finish by the last day of sowing",
            "under sampled weather, and what to give to the late mix, with the day that choice is",
            "due."
        })
public final class SeasonCommand extends OfficeCommand {

    /** The season for programs, in the units of the farm. */
    record Figures(
            LocalDate day,
            String areaUnit,
            List<MixFigures> mixes,
            double areaPerFitDay,
            double fitShare,
            String paceRestsOn,
            double finishChance,
            double leftLow,
            double leftMiddle,
            double leftHigh,
            List<DropFigures> drops) {}

    /** One mix. */
    record MixFigures(
            String mix,
            double done,
            double failed,
            double left,
            LocalDate lastSowing,
            double finishChance) {}

    /** A field to give to its late mix. */
    record DropFigures(String field, double area, String lateMix, LocalDate choiceDue) {}

    @Override
    protected int work(Office office) {
        LoadDesk loads = new LoadDesk(office);
        Plan plan = loads.plan(loads.today());
        SeasonDesk.View view =
                office.store().read(books -> new SeasonDesk(office).view(books, plan));
        UnitSystem units = office.settings().farm().units();
        show(figures(view, units), () -> text(view, units));
        return 0;
    }

    private static Figures figures(SeasonDesk.View view, UnitSystem units) {
        return new Figures(
                view.today(),
                units.symbol(Quantity.AREA),
                view.mixes().stream()
                        .map(m -> new MixFigures(
                                m.mix(),
                                area(units, m.doneHa()),
                                area(units, m.failedHa()),
                                area(units, m.leftHa()),
                                m.lastSowing(),
                                m.finishChance()))
                        .toList(),
                area(units, view.pace().haPerDay()),
                view.pace().fitFraction(),
                view.rests(),
                view.whole().finishChance(),
                area(units, view.whole().p10LeftHa()),
                area(units, view.whole().p50LeftHa()),
                area(units, view.whole().p90LeftHa()),
                view.drops().stream()
                        .map(d -> new DropFigures(
                                d.field(), area(units, d.areaHa()), d.lateMix(), d.choiceDue()))
                        .toList());
    }

    private static double area(UnitSystem units, double areaHa) {
        return Math.round(100 * units.shown(Quantity.AREA, areaHa)) / 100.0;
    }

    private static String text(SeasonDesk.View view, UnitSystem units) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("mix", "done", "failed", "left", "last day", "done by then"));
        view.mixes()
                .forEach(m -> rows.add(List.of(
                        m.mix(),
                        units.area(m.doneHa()),
                        units.area(m.failedHa()),
                        units.area(m.leftHa()),
                        m.lastSowing().toString(),
                        percent(m.finishChance()))));
        List<String> lines = new ArrayList<>(List.of(Sheets.columns(rows), ""));
        lines.add("Pace: " + units.area(view.pace().haPerDay()) + " on a fit day (by "
                + view.rests() + "), " + percent(view.pace().fitFraction())
                + " of working days fit.");
        lines.add("All done by the last day: " + percent(view.whole().finishChance())
                + (view.whole().p90LeftHa() < 0.01
                        ? "; nothing is left undone in nine of ten sampled seasons."
                        : "; left undone most likely " + units.area(view.whole().p50LeftHa())
                                + ", one time in ten more than "
                                + units.area(view.whole().p90LeftHa()) + "."));
        lines.add("Each working day must bring " + units.area(view.whole().neededHaPerDay()) + ".");
        if (view.drops().isEmpty()) {
            lines.add("Nothing need be given to the late mix today.");
        } else {
            lines.add("So that the rest is likely to finish, give to the late mix:");
            view.drops()
                    .forEach(d -> lines.add("  " + d.field() + ", " + units.area(d.areaHa()) + ": "
                            + d.lateMix() + "; decide by " + d.choiceDue()));
            int fields = view.drops().size();
            lines.add("  In all " + fields + (fields == 1 ? " field, " : " fields, ")
                    + units.area(view.drops().stream()
                            .mapToDouble(SeasonDesk.Drop::areaHa)
                            .sum())
                    + ".");
        }
        return String.join(System.lineSeparator(), lines);
    }

    private static String percent(double share) {
        if (share > 0.99 && share < 1) {
            return "over 99 %";
        }
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
