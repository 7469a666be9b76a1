package rainward.daemon.command;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.Office;
import rainward.daemon.office.SurveyDesk;
import rainward.intake.InputFault;

/** Takes fields in. */
@Command(
        name = "import",
        description = {
            "Take fields in from a file: boundaries as GeoJSON, or points and acres as CSV.",
            "",
            "All of the file is taken or, with every fault told, nothing. Importing again updates",
            "fields by name; what is recorded about them stays."
        })
public final class ImportCommand extends OfficeCommand {

    @Parameters(index = "0", paramLabel = "FILE", description = "A .geojson or .csv file.")
    Path file = Path.of("");

    /** What was taken in, as JSON shows it. */
    record Answer(int added, int updated, List<String> warnings) {}

    @Override
    protected int work(Office office) {
        SurveyDesk.Took took = new SurveyDesk(office).take(file);
        Answer answer = new Answer(
                took.counts().added(),
                took.counts().updated(),
                took.warnings().stream().map(InputFault::words).toList());
        show(answer, () -> text(answer));
        return 0;
    }

    private static String text(Answer answer) {
        String notes = answer.warnings().stream()
                .map(warning -> "Note: " + warning + System.lineSeparator())
                .collect(Collectors.joining());
        return notes + answer.added() + " fields added, " + answer.updated()
                + " updated. See them with `rainward ready`.";
    }
}
