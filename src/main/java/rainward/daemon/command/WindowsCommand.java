package rainward.daemon.command;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import rainward.brief.words.Reader;
import rainward.cycle.sheet.WindowSheet;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.farm.DayClock;
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

    @Override
    protected int work(Office office) {
        List<StormWindow> windows = new PlanningDesk(office).reckon().outlook().windows();
        ZoneId zone = office.zone();
        show(WindowSheet.of(windows, zone), () -> text(windows, office.reader()));
        return 0;
    }

    private static String text(List<StormWindow> windows, Reader reader) {
        DayClock clock = reader.clock();
        UnitSystem units = reader.units();
        if (windows.isEmpty()) {
            return "No storm window is open.";
        }
        List<String> lines = new ArrayList<>();
        for (StormWindow window : windows) {
            WindowSheet sheet = WindowSheet.of(window, clock.zone());
            lines.add(String.join(", ", sheet.properties()) + ": useful rain "
                    + Math.round(100 * sheet.chance()) + " %, between "
                    + clock.dayTime(sheet.arrival().get(0).toInstant())
                    + " and " + clock.dayTime(sheet.arrival().get(2).toInstant()) + ", "
                    + units.roughRain(sheet.amountMm().get(0)) + " to "
                    + units.roughRain(sheet.amountMm().get(2)) + ", hard rain "
                    + Math.round(100 * sheet.hardRainChance()) + " %");
            sheet.fits()
                    .forEach(fit -> lines.add("  fits: " + fit.field() + ", planned "
                            + clock.dayTime(fit.plannedStart().toInstant()) + ", last safe start "
                            + clock.dayTime(fit.lastSafeStart().toInstant())));
            if (!sheet.leave().isEmpty()) {
                lines.add("  leave: " + String.join(", ", sheet.leave()));
            }
        }
        return String.join(System.lineSeparator(), lines);
    }
}
