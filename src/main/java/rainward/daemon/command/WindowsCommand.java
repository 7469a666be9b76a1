package rainward.daemon.command;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import rainward.cycle.sheet.WindowSheet;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.farm.UnitSystem;
import rainward.window.StormWindow;

/** Prints the storm windows that are open. */
@Command(
        name = "windows",
        description = {
            "Print the storm windows: time left to seed ahead of useful rain.",
            "",
            "For each: where, when the rain comes, how much, what fits before it with the last",
            "safe start of each field, and what to leave."
        })
public final class WindowsCommand extends OfficeCommand {

    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("EEE HH:mm", Locale.US);

    @Override
    protected int work(Office office) {
        List<StormWindow> windows = new PlanningDesk(office).reckon().outlook().windows();
        ZoneId zone = office.zone();
        show(
                WindowSheet.of(windows, zone),
                () -> text(windows, zone, office.settings().farm().units()));
        return 0;
    }

    private static String text(List<StormWindow> windows, ZoneId zone, UnitSystem units) {
        if (windows.isEmpty()) {
            return "No storm window is open.";
        }
        List<String> lines = new ArrayList<>();
        for (StormWindow window : windows) {
            WindowSheet sheet = WindowSheet.of(window, zone);
            lines.add(String.join(", ", sheet.properties()) + ": useful rain "
                    + Math.round(100 * sheet.chance()) + " %, between "
                    + WHEN.format(sheet.arrival().get(0))
                    + " and " + WHEN.format(sheet.arrival().get(2)) + ", "
                    + units.roughRain(sheet.amountMm().get(0)) + " to "
                    + units.roughRain(sheet.amountMm().get(2)) + ", hard rain "
                    + Math.round(100 * sheet.hardRainChance()) + " %");
            sheet.fits()
                    .forEach(fit -> lines.add("  fits: " + fit.field() + ", planned "
                            + WHEN.format(fit.plannedStart()) + ", last safe start "
                            + WHEN.format(fit.lastSafeStart())));
            if (!sheet.leave().isEmpty()) {
                lines.add("  leave: " + String.join(", ", sheet.leave()));
            }
        }
        return String.join(System.lineSeparator(), lines);
    }
}
