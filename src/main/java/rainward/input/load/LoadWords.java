package rainward.input.load;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.farm.DayClock;
import rainward.farm.Operation;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.seed.Fill;
import rainward.input.seed.SeedLot;

/**
 * Words and numbers of a load sheet, for the screen and for paper.
 *
 * @param units of the person
 * @param zone of the farm's days
 */
public record LoadWords(UnitSystem units, ZoneId zone) {

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);

    /** Tuesday 14 July 2026. */
    public static String day(TemporalAccessor day) {
        return DAY.format(day);
    }

    /** On the farm's clock, as the person says it. */
    public String hour(Instant at) {
        return new DayClock(zone, units).time(at);
    }

    public String mass(double massKg) {
        return units.mass(massKg);
    }

    /** What goes on for a line of work; a spreader is set by its rate, so that is said too. */
    public String amounts(LoadSheet.Line line) {
        return line.passes().stream()
                .map(pass -> pass(line, pass))
                .collect(Collectors.joining("; "));
    }

    private String pass(LoadSheet.Line line, LoadSheet.Pass pass) {
        boolean blend = pass.loads() > 0 && pass.amounts().size() > 1;
        return pass.amounts().stream()
                        .map(amount ->
                                amount.what() + " " + mass(amount.massKg()) + rate(line, amount))
                        .collect(Collectors.joining(", "))
                + (blend ? ", blended," : "")
                + (pass.loads() > 0 ? " in " + loads(pass.loads()) : "");
    }

    /** 17 loads in all, where a machine spreads; of what is not known none are counted. */
    public static Optional<String> allLoads(LoadSheet.MachineSheet machine) {
        boolean known = machine.lines().stream()
                .filter(line -> line.item().place().operation() == Operation.SPREAD)
                .noneMatch(line -> line.passes().isEmpty());
        return machine.loads() > 0
                ? Optional.of(
                        loads(machine.loads()) + (known ? " in all" : " in all, as far as known"))
                : Optional.empty();
    }

    private String rate(LoadSheet.Line line, LoadSheet.Amount amount) {
        return line.item().place().operation() == Operation.SPREAD
                ? " (" + units.text(Quantity.RATE, amount.massKg() / line.areaHa(), 0) + ")"
                : "";
    }

    /** What to mind at a fill, said after its amounts. */
    public static List<String> notes(Fill fill, UnitSystem units) {
        List<String> notes = new ArrayList<>();
        if (fill.staysKg() > 0) {
            notes.add(units.mass(fill.staysKg())
                    + " of it stays in so that the meters do not starve");
        }
        if (fill.emptied()) {
            notes.add("empty the boxes first");
        }
        return notes;
    }

    /** 1 load, 3 loads. */
    public static String loads(int loads) {
        return loads + (loads == 1 ? " load" : " loads");
    }

    /** Bags to take, what comes out of an opened one behind {@code and}, and what is short. */
    public String pull(SeedLot.Pull pull, String and) {
        String bags = pull.wholeBags() + (pull.wholeBags() == 1 ? " bag" : " bags");
        String loose = pull.openedKg() > 0 ? mass(pull.openedKg()) + " loose" : "";
        boolean both = pull.wholeBags() > 0 && pull.openedKg() > 0;
        return (pull.wholeBags() > 0 || pull.openedKg() <= 0 ? bags : "")
                + (both ? and : "")
                + loose
                + (pull.shortKg() > 0 ? "; SHORT OF " + mass(pull.shortKg()) : "");
    }

    /** What goes into each box, left to right. */
    public String boxes(Fill fill) {
        return fill.perBoxKg().stream().map(this::mass).collect(Collectors.joining(" + "));
    }
}
