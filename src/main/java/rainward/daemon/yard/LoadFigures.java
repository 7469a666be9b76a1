package rainward.daemon.yard;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.Gap;
import rainward.input.load.LoadSheet;
import rainward.input.seed.Fill;

/**
 * A load sheet for programs, in the units of the farm.
 *
 * @param day of the farm's zone
 * @param massUnit of every mass
 * @param areaUnit of every area
 * @param machines in the order of their first work
 * @param totals by what is loaded
 * @param gaps what cannot be said, with the remedy
 */
public record LoadFigures(
        LocalDate day,
        String massUnit,
        String areaUnit,
        List<MachineFigures> machines,
        List<TotalFigures> totals,
        List<Gap> gaps) {

    /** One machine's day. */
    public record MachineFigures(
            String machine, List<LineFigures> lines, List<FillFigures> fills) {}

    /** One piece of work. */
    public record LineFigures(
            OffsetDateTime start,
            String field,
            String property,
            String stage,
            String person,
            Optional<String> mix,
            double area,
            List<AmountFigures> amounts,
            int loads,
            Optional<Double> setting,
            Optional<String> settingSureness) {}

    /** A mass of something. */
    public record AmountFigures(String what, double mass) {}

    /** A stop at the seed boxes. */
    public record FillFigures(
            String field,
            String mix,
            double afterArea,
            double mass,
            List<Double> boxes,
            double staysMass,
            boolean emptied) {}

    /** All of one thing. */
    public record TotalFigures(
            String what, double need, double spare, int wholeBags, double loose, double lacking) {}

    /** The figures of a sheet. */
    public static LoadFigures of(LoadSheet sheet, UnitSystem units, ZoneId zone) {
        Turn turn = new Turn(units, zone);
        return new LoadFigures(
                sheet.day(),
                units.symbol(Quantity.MASS),
                units.symbol(Quantity.AREA),
                sheet.machines().stream().map(turn::machine).toList(),
                sheet.totals().stream().map(turn::total).toList(),
                sheet.gaps());
    }

    /** Turns inside units into the person's. */
    private record Turn(UnitSystem units, ZoneId zone) {

        double mass(double massKg) {
            return Math.round(100 * units.shown(Quantity.MASS, massKg)) / 100.0;
        }

        double area(double areaHa) {
            return Math.round(1000 * units.shown(Quantity.AREA, areaHa)) / 1000.0;
        }

        MachineFigures machine(LoadSheet.MachineSheet machine) {
            return new MachineFigures(
                    machine.machine(),
                    machine.lines().stream().map(this::line).toList(),
                    machine.fills().stream().map(this::fill).toList());
        }

        LineFigures line(LoadSheet.Line line) {
            return new LineFigures(
                    line.item().work().from().atZone(zone).toOffsetDateTime(),
                    line.item().place().field(),
                    line.item().place().property(),
                    line.item().place().stage(),
                    line.item().hands().person(),
                    line.item().sowing().map(sowing -> sowing.mix()),
                    area(line.areaHa()),
                    line.amounts().stream()
                            .map(a -> new AmountFigures(a.what(), mass(a.massKg())))
                            .toList(),
                    line.loads(),
                    line.setting().map(s -> Math.round(10 * s.settingIndex()) / 10.0),
                    line.setting().map(s -> s.sureness().words()));
        }

        FillFigures fill(Fill fill) {
            return new FillFigures(
                    fill.field(),
                    fill.mix(),
                    area(fill.afterHa()),
                    mass(fill.addKg()),
                    fill.perBoxKg().stream().map(this::mass).toList(),
                    mass(fill.staysKg()),
                    fill.emptied());
        }

        TotalFigures total(LoadSheet.Total total) {
            return new TotalFigures(
                    total.what(),
                    mass(total.needKg()),
                    mass(total.spareKg()),
                    total.pull().map(pull -> pull.wholeBags()).orElse(0),
                    total.pull().map(pull -> mass(pull.openedKg())).orElse(0.0),
                    total.pull().map(pull -> mass(pull.shortKg())).orElse(0.0));
        }
    }
}
