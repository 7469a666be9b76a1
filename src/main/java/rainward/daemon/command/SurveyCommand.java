package rainward.daemon.command;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.GroundDesk;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Field;

/** Shows what public soil surveys say of the fields, for somebody to confirm. */
@Command(
        name = "survey",
        description = {
            "Show what public soil surveys say of each field, and take or leave it.",
            "",
            "A field keeps the soil that it was imported with until you take the survey's. What",
            "you import later stands in its place again: your own word outranks the survey."
        })
public final class SurveyCommand extends OfficeCommand {

    private static final int MOST = 100;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FIELD",
            description = "The field, or the beginning of its name; else all.")
    @Nullable
    String field;

    @Option(names = "--ask", description = "Ask the surveys for fields that have none yet.")
    boolean ask;

    @Option(names = "--take", description = "Reckon with the survey's soil.")
    boolean take;

    @Option(names = "--leave", description = "Keep the field's own soil.")
    boolean leave;

    /** The list, as JSON shows it. */
    record Answer(List<GroundDesk.Line> fields, List<String> notes) {}

    @Override
    protected int work(Office office) {
        if (take && leave) {
            throw Refusal.badInput("Give --take or --leave, not both.");
        }
        GroundDesk desk = new GroundDesk(office);
        List<String> notes = ask ? desk.ask(MOST) : List.of();
        Optional<String> name = Optional.ofNullable(field).map(office::fieldNamed);
        if (take || leave) {
            settle(desk, name);
        }
        Answer answer = new Answer(
                desk.all().stream()
                        .filter(line -> name.isEmpty() || line.field().equals(name.get()))
                        .toList(),
                notes);
        show(answer, () -> text(answer, office));
        return notes.isEmpty() ? 0 : Refusal.BAD_WORLD;
    }

    private void settle(GroundDesk desk, Optional<String> name) {
        List<String> names = name.map(List::of)
                .orElseGet(() -> desk.all().stream()
                        .filter(line -> line.survey()
                                .filter(s -> s.state() == GroundDesk.State.PROPOSED)
                                .isPresent())
                        .map(GroundDesk.Line::field)
                        .toList());
        for (String each : names) {
            boolean done = take ? desk.take(each) : desk.leave(each);
            if (!done) {
                throw Refusal.badInput("No survey was fetched for " + each
                        + " yet: ask with `rainward survey --ask`.");
            }
        }
    }

    private static String text(Answer answer, Office office) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("field", "in use", "survey", "", "from"));
        answer.fields()
                .forEach(line -> rows.add(List.of(
                        line.field(),
                        words(line.inUse()),
                        line.survey().map(SurveyCommand::words).orElse("not asked yet"),
                        line.survey()
                                .map(s -> s.state().name().toLowerCase(Locale.ROOT))
                                .orElse(""),
                        line.survey()
                                .map(s -> s.source() + " "
                                        + LocalDate.ofInstant(s.fetchedAt(), office.zone()) + ": "
                                        + s.described())
                                .orElse(""))));
        String notes = answer.notes().isEmpty()
                ? ""
                : System.lineSeparator() + String.join(System.lineSeparator(), answer.notes());
        return Sheets.columns(rows) + notes;
    }

    private static String words(Field.Ground ground) {
        return words(
                ground.texture().sandFraction(),
                ground.texture().clayFraction(),
                ground.texture().organicMatterPct(),
                Optional.of(ground.slopeFraction()));
    }

    private static String words(GroundDesk.Known known) {
        return words(
                known.sandFraction(),
                known.clayFraction(),
                known.organicMatterPct(),
                known.slopeFraction());
    }

    private static String words(double sand, double clay, double om, Optional<Double> slope) {
        return String.format(
                Locale.US,
                "sand %.0f %%, clay %.0f %%, organic %.1f %%%s",
                100 * sand,
                100 * clay,
                om,
                slope.map(s -> String.format(Locale.US, ", slope %.0f %%", 100 * s))
                        .orElse(""));
    }
}
