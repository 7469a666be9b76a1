package rainward.daemon.command;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.brief.ForecastAge;
import rainward.brief.words.Reader;
import rainward.cycle.Cycle;
import rainward.cycle.sheet.OrderSheet;
import rainward.daemon.office.AlertDesk;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.farm.DayClock;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.queue.problem.Plan;

/** Prints the order as it stands. */
@Command(
        name = "order",
        description = {
            "Print the order of work: which field next, by whom, with what, when.",
            "",
            "It rests on the last forecast pulled and on everything done and measured so far;",
            "nothing is asked for and nothing is changed.",
            "",
            "What-if changes, with semicolons between: hold FIELD [until DATE], drop FIELD,",
            "pin FIELD, add MACHINE, add person, without NAME, start HH:MM, end HH:MM,",
            "overtime HOURS."
        })
public final class OrderCommand extends OfficeCommand {

    /** Reasons below it speak of ground and wind; without this nobody would know where from. */
    private static final String OLD = ": too old to work by. What follows rests on what is usual"
            + " for the season; run `rainward pull`.";

    /** One question about the order, or none. */
    static final class Question {

        @Option(names = "--why", paramLabel = "FIELD", description = "Why it stands where it does.")
        @Nullable
        String why;

        @Option(
                names = "--what-if",
                paramLabel = "CHANGES",
                description = "What changes would bring: \"hold F12; add tiller; start 06:00\".")
        @Nullable
        String whatIf;
    }

    @ArgGroup
    Question question = new Question();

    @Override
    protected int work(Office office) {
        String why = question.why;
        String whatIf = question.whatIf;
        PlanningDesk desk = new PlanningDesk(office);
        if (why != null) {
            return explain(office, desk, office.fieldNamed(why));
        }
        if (whatIf != null) {
            return ponder(office, desk, whatIf);
        }
        return print(office, desk);
    }

    private int explain(Office office, PlanningDesk desk, String field) {
        Cycle.Result result = desk.reckon();
        OrderWhy.mustHaveForecast(result);
        var sky = new OrderWhy.Sky(
                AlertDesk.stops(office, field, result.problem().horizon()), office.zone());
        OrderWhy why = OrderWhy.of(result, field, sky);
        show(why, () -> why.text(office));
        return 0;
    }

    private int ponder(Office office, PlanningDesk desk, String edits) {
        Cycle.Result result = desk.reckon();
        OrderWhy.mustHaveForecast(result);
        OrderWhatIf then = OrderWhatIf.of(result, edits, office.zone(), desk::effort);
        show(then, () -> then.text(office.reader()));
        return 0;
    }

    private int print(Office office, PlanningDesk desk) {
        Cycle.Result result = desk.reckon();
        OrderSheet sheet = OrderSheet.of(result.outlook(), office.zone());
        show(sheet, () -> text(sheet, result.outlook().plan(), office.reader()));
        return 0;
    }

    private static String text(OrderSheet sheet, Plan plan, Reader reader) {
        UnitSystem units = reader.units();
        DayClock clock = reader.clock();
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("#", "start", "end", "field", "area", "stage", "machine", "who", "stand"));
        for (OrderSheet.Line line : sheet.items()) {
            rows.add(List.of(
                    String.valueOf(line.rank()),
                    clock.dateTime(line.start().toInstant()),
                    clock.time(line.end().toInstant()),
                    line.field(),
                    area(line.acres(), units),
                    line.stage(),
                    line.machine(),
                    line.person(),
                    line.chanceOfStand() > 0
                            ? Math.round(100 * line.chanceOfStand()) + " %"
                            : "no seed yet"));
        }
        List<String> parts = new ArrayList<>();
        parts.add(head(sheet, clock));
        parts.add(sheet.items().isEmpty() ? "Nothing is in the order." : Sheets.columns(rows));
        plan.leftOut().forEach(left -> parts.add("Left out: " + left.field() + ": " + left.why()));
        return String.join(System.lineSeparator(), parts);
    }

    private static String area(double acres, UnitSystem units) {
        return units.area(UnitSystem.US_CUSTOMARY.inside(Quantity.AREA, acres));
    }

    private static String head(OrderSheet sheet, DayClock clock) {
        String asOf = "Order as of " + clock.dateTime(sheet.asOf().toInstant());
        return sheet.forecastIssuedAt()
                .map(issued ->
                        asOf + ", forecast issued " + clock.dateTime(issued.toInstant()) + " ("
                                + Math.round(sheet.forecastAgeHours().orElse(0.0)) + " h old)"
                                + (stale(sheet) ? OLD : ""))
                .orElse(asOf + ", without a forecast: run `rainward pull` first");
    }

    private static boolean stale(OrderSheet sheet) {
        return sheet.forecastAgeHours()
                .filter(hours -> hours > ForecastAge.NOT_FRESH.toHours())
                .isPresent();
    }
}
