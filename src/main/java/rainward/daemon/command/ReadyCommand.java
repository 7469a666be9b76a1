package rainward.daemon.command;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import rainward.cycle.Outlook;
import rainward.cycle.ReadySheet;
import rainward.cycle.WeatherSheet;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;

/** Prints how ready each field is. */
@Command(
        name = "ready",
        description = {
            "Print how ready each waiting field is to be seeded, and why.",
            "",
            "Readiness runs from 0 to 100: the chance of a stand when seeded at the next possible",
            "hour, marked down where a later hour would bring more. Rain, moisture and heat are",
            "shown apart; what stops the field is named."
        })
public final class ReadyCommand extends OfficeCommand {

    @Override
    int work(Office office) {
        Outlook outlook = new PlanningDesk(office).reckon().outlook();
        List<ReadySheet> sheets = ReadySheet.of(outlook, office.zone());
        show(new Ready(sheets, WeatherSheet.of(outlook, office.zone())), () -> text(sheets));
        return 0;
    }

    /** What is printed as JSON. */
    record Ready(List<ReadySheet> fields, List<WeatherSheet> weather) {}

    private static String text(List<ReadySheet> sheets) {
        if (sheets.isEmpty()) {
            return "No field waits for seed.";
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("ready", "rain", "moist", "heat", "field", "why"));
        for (ReadySheet sheet : sheets) {
            rows.add(List.of(
                    String.valueOf(sheet.readiness()),
                    String.valueOf(sheet.parts().rain()),
                    String.valueOf(sheet.parts().moisture()),
                    String.valueOf(sheet.parts().heat()),
                    sheet.field(),
                    sheet.reason() + stopped(sheet)));
        }
        return Sheets.columns(rows);
    }

    private static String stopped(ReadySheet sheet) {
        return sheet.gates().isEmpty() ? "" : " [" + String.join("; ", sheet.gates()) + "]";
    }
}
