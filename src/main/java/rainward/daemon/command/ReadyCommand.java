package rainward.daemon.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.brief.FieldPanel;
import rainward.brief.picture.FieldChart;
import rainward.cycle.Outlook;
import rainward.cycle.sheet.ReadySheet;
import rainward.cycle.sheet.WeatherSheet;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.daemon.office.Refusal;
import rainward.mail.BundledLettering;
import rainward.mail.Png;

/** Prints how ready each field is. */
@Command(
        name = "ready",
        description = {
            "Print how ready each waiting field is to be seeded, and why.",
            "",
            "Readiness runs from 0 to 100: the chance of a stand when seeded at the next possible",
            "hour, marked down where a later hour would bring more. Rain, moisture and heat are",
            "shown apart; what stops the field is named. One field alone is shown with the numbers",
            "behind it, and with --picture as an image of the days ahead."
        })
public final class ReadyCommand extends OfficeCommand {

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FIELD",
            description = "One field only, or the beginning of its name.")
    @Nullable
    String field;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description = "Draw rain, moisture and chance of that field into a PNG file.")
    @Nullable
    Path picture;

    @Override
    protected int work(Office office) {
        Optional<String> one = Optional.ofNullable(field).map(office::fieldNamed);
        if (picture != null && one.isEmpty()) {
            throw Refusal.badInput("A picture shows one field: name it before --picture.");
        }
        Outlook outlook = new PlanningDesk(office).standing();
        List<ReadySheet> sheets = ReadySheet.of(outlook, office.zone()).stream()
                .filter(sheet -> one.isEmpty() || one.get().equals(sheet.field()))
                .toList();
        if (picture != null) {
            draw(outlook, one.orElseThrow(), office, picture);
        }
        show(
                new Ready(sheets, WeatherSheet.of(outlook, office.zone())),
                () -> text(sheets, one, office));
        return 0;
    }

    /** What is printed as JSON. */
    record Ready(List<ReadySheet> fields, List<WeatherSheet> weather) {}

    private static void draw(Outlook outlook, String name, Office office, Path file) {
        FieldPanel panel = FieldPanel.of(outlook, name)
                .orElseThrow(() -> Refusal.badInput(name + " was not reckoned, so there is nothing"
                        + " to draw: `rainward ready` says what stops it."));
        byte[] png = Png.bytes(FieldChart.draw(
                panel, office.zone(), office.settings().farm().units(), BundledLettering.read()));
        try {
            Files.write(file, png);
        } catch (IOException e) {
            throw Refusal.badInput("The picture cannot be written to " + file + ": name a file in a"
                    + " folder that is there.");
        }
    }

    private static String text(List<ReadySheet> sheets, Optional<String> one, Office office) {
        if (sheets.isEmpty()) {
            return one.map(name -> name + " does not wait for seed.")
                    .orElse("No field waits for seed.");
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
        return Sheets.columns(rows)
                + one.flatMap(name -> sheets.get(0).numbers())
                        .map(numbers -> System.lineSeparator()
                                + System.lineSeparator()
                                + new ReadyNumbers(office, numbers).text())
                        .orElse("");
    }

    /** What stops it, but for what the reason has said already. */
    private static String stopped(ReadySheet sheet) {
        String told = sheet.reason().toLowerCase(Locale.ROOT);
        String untold = sheet.gates().stream()
                .filter(gate -> !told.contains(gate.toLowerCase(Locale.ROOT)))
                .collect(Collectors.joining("; "));
        return untold.isEmpty() ? "" : " [" + untold + "]";
    }
}
