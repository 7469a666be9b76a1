package rainward.daemon.yard.command;

import java.nio.file.Path;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.Office;
import rainward.daemon.yard.LoadDesk;
import rainward.daemon.yard.LoadFigures;
import rainward.daemon.yard.Typed;
import rainward.daemon.yard.paper.LoadPaper;
import rainward.farm.UnitSystem;
import rainward.input.load.LoadSheet;
import rainward.input.load.LoadText;

/** Says what goes on the trucks. */
@Command(
        name = "load",
        description = {
            "What goes on the trucks on a day: by machine, in the order of the work, with fills",
            "along the route, totals and spares.",
            "",
            "What is not known stands under NOT KNOWN with what to measure; nothing is guessed."
        })
public final class LoadCommand extends OfficeCommand {

    @Option(names = "--day", paramLabel = "DAY", description = "YYYY-MM-DD; else today.")
    @Nullable
    String day;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            description = "us or metric; else those of the farm.")
    @Nullable
    String units;

    @Option(
            names = "--print",
            paramLabel = "FILE",
            description = "Write the sheet as PDF to hang in the truck.")
    @Nullable
    Path print;

    @Override
    protected int work(Office office) {
        LoadDesk desk = new LoadDesk(office);
        LocalDate when = Typed.day(day, desk.today());
        LoadSheet sheet = desk.sheet(when);
        UnitSystem shown = Typed.units(units, office.settings().farm().units());
        if (print != null) {
            ExportCommand.write(
                    print,
                    LoadPaper.of(
                            sheet,
                            office.settings().farm().name(),
                            shown,
                            office.now().atZone(office.zone())));
        }
        show(
                LoadFigures.of(sheet, shown, office.zone()),
                () -> LoadText.of(sheet, shown, office.zone()));
        return 0;
    }
}
