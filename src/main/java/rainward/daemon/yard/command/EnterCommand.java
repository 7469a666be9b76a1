package rainward.daemon.yard.command;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.settings.Spelled;
import rainward.daemon.yard.EnterDesk;
import rainward.intake.RecordTable;

/** Takes a table of records in. */
@Command(
        name = "enter",
        description = {
            "Take a table (CSV with a header) into the ledger, all of it or nothing.",
            "",
            "  soil-tests  field, sampled_on, ph, buffer_ph, buffer_method, p_ppm, p_method,",
            "              k_ppm, k_method, cec",
            "  tags        species, lot, purity_percent, germination_percent, on (day of the",
            "              test); also dormant_percent, coating_percent, coating_in_purity",
            "  harvests    field, crop, on, yield_lb_per_ac or yield_kg_per_ha",
            "  stock       item, on, lb or kg, what (counted or received)",
            "  sprays      field, product, crop, on, label_days (plant-back interval that the",
            "              label asks for before this crop; left empty nobody guesses it)",
            "",
            "Safe to repeat: a line that stands there already is not written again.",
            "What was entered by mistake is taken back by entering the same lines with --undo."
        })
public final class EnterCommand extends OfficeCommand {

    @Parameters(index = "0", paramLabel = "KIND", description = "What the table holds.")
    String kind = "";

    @Parameters(index = "1", paramLabel = "FILE", description = "The table.")
    Path file = Path.of("");

    @Option(names = "--undo", description = "Take these lines back; they stay on record.")
    boolean undo;

    @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
    String by = "office";

    @Override
    protected int work(Office office) {
        RecordTable.Kind meant = NameMatch.among(RecordTable.Kind.values(), kind, "kind of table");
        EnterDesk desk = new EnterDesk(office);
        EnterDesk.Took took = undo ? desk.takeBack(file, meant, by) : desk.take(file, meant, by);
        String lines = (took.written() == 1 ? " line of " : " lines of ") + Spelled.dashed(meant);
        show(
                took,
                () -> undo
                        ? took.written() + lines + " taken back, " + took.known()
                                + " did not stand there."
                        : took.written() + lines + " written, " + took.known()
                                + " stood there already.");
        return 0;
    }
}
