package rainward.daemon.yard.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.yard.paper.Exports;
import rainward.store.Dump;

/** Writes records into files to hand on. */
@Command(
        name = "export",
        description = {
            "Write records into a file to hand on.",
            "",
            "  fields   every field with its state and stand, CSV",
            "  inputs   everything that was put on and in, CSV",
            "  journal  every line that was ever said, CSV",
            "  map      every field with its state, GeoJSON",
            "  report   the season on a property, for its landowner, PDF",
            "  all      everything that is kept, into a new folder: CSV, mails, answers"
        })
public final class ExportCommand extends OfficeCommand {

    private static final List<String> KINDS =
            List.of("fields", "inputs", "journal", "map", "report", "all");

    @Parameters(index = "0", paramLabel = "WHAT", description = "One of those above.")
    String what = "";

    @Parameters(
            index = "1",
            paramLabel = "FILE",
            description = "The file; it is written anew. For all: the folder.")
    Path file = Path.of("");

    @Option(names = "--property", paramLabel = "NAME", description = "For report: whose.")
    @Nullable
    String property;

    @Option(names = "--year", paramLabel = "YEAR", description = "For report: else this year.")
    @Nullable
    Integer year;

    @Override
    protected int work(Office office) {
        String kind = NameMatch.of(what, KINDS).orRefuse("export");
        if (kind.equals("all")) {
            return everything(office);
        }
        Exports exports = new Exports(office);
        byte[] bytes = switch (kind) {
            case "fields" -> exports.fieldsCsv();
            case "inputs" -> exports.inputsCsv();
            case "journal" -> exports.journalCsv();
            case "map" -> exports.geoJson();
            default -> exports.report(whose(office), Optional.ofNullable(year));
        };
        write(file, bytes);
        show(Map.of("file", file.toString(), "bytes", bytes.length), () -> file + " written.");
        return 0;
    }

    private int everything(Office office) {
        String[] inIt = file.toFile().list();
        if (Files.exists(file) && (inIt == null || inIt.length > 0)) {
            throw Refusal.badInput(file + " is there and not an empty folder: name a new one.");
        }
        Map<String, Long> rows = Dump.of(office.store(), file);
        long all = rows.values().stream().mapToLong(Long::longValue).sum();
        show(
                Map.of("folder", file.toString(), "rows", rows),
                () -> file + " written: " + all + " rows of " + rows.size() + " tables.");
        return 0;
    }

    private String whose(Office office) {
        if (property == null) {
            throw Refusal.badInput("A report is of one property: add --property, one of "
                    + String.join(", ", office.properties()) + ".");
        }
        return office.propertyNamed(property);
    }

    /** Writes a file whole. */
    static void write(Path file, byte[] bytes) {
        try {
            Files.write(file, bytes);
        } catch (IOException e) {
            throw Refusal.badInput(file + " cannot be written (" + e.getMessage()
                    + "): name a file in a folder that is there.");
        }
    }
}
