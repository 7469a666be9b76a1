package rainward.daemon.command;

import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.cycle.CycleInput.SoilWord;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.soil.SoilState.Word;
import rainward.store.journal.JournalEntry;

/** Takes the word of somebody who dug. */
@Command(
        name = "soil",
        description = {
            "Write down what somebody who dug saw at seed depth: dry, moist or wet.",
            "",
            "Dry crumbles, moist holds a ball, wet glistens or sticks. The reckoned soil of the",
            "field is put right from that hour on, and its readiness with it."
        })
public final class SoilCommand extends OfficeCommand {

    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.US);

    @Parameters(
            index = "0",
            paramLabel = "FIELD",
            description = "The field, or the beginning of its name.")
    String field = "";

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "WORD",
            description = "dry, moist or wet.")
    @Nullable
    String word;

    @Option(names = "--undo", description = "Take back the last word about the field.")
    boolean undo;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            description = "When somebody dug: HH:MM today, or YYYY-MM-DD HH:MM. Else now.")
    @Nullable
    String at;

    @Option(names = "--by", paramLabel = "NAME", description = "Who dug.")
    String by = "office";

    /**
     * What came of it, as JSON shows it.
     *
     * @param field its name
     * @param outcome written or already so
     * @param words for the person
     */
    record Answer(String field, String outcome, String words) {}

    @Override
    int work(Office office) {
        String name = office.fieldNamed(field);
        if (undo == (word != null)) {
            throw Refusal.badInput("Say what was seen, dry, moist or wet, or give --undo to take"
                    + " the last word back; one of the two.");
        }
        Answer answer = word == null ? takeBack(office, name) : write(office, name, word);
        show(answer, answer::words);
        return 0;
    }

    private Answer write(Office office, String name, String text) {
        Word seen = seen(text);
        JournalEntry.Said said = said(office);
        office.store().inTransaction(books -> books.soilWords().say(name, seen, said));
        return new Answer(
                name,
                "written",
                name + ": " + told(seen) + " at seed depth, " + shown(said.at(), office) + ".");
    }

    private Answer takeBack(Office office, String name) {
        Instant now = office.now();
        JournalEntry.Said said = new JournalEntry.Said(now, now, by);
        Optional<SoilWord> gone =
                office.store().inTransaction(books -> books.soilWords().undo(name, said));
        return gone.map(last -> new Answer(
                        name,
                        "written",
                        name + ": " + told(last.word()) + " at seed depth, "
                                + shown(last.at(), office) + ", does not count any more."))
                .orElseGet(() -> new Answer(
                        name, "already so", name + ": nobody's word on its soil counts."));
    }

    private JournalEntry.Said said(Office office) {
        Instant now = office.now();
        LocalDate today = LocalDate.ofInstant(now, office.zone());
        Instant dug = at == null ? now : StageCommand.moment(at, today, office.zone());
        if (dug.isAfter(now)) {
            throw Refusal.badInput("Nobody can have dug at " + at + ", which is still to come: give"
                    + " --at a time that has passed.");
        }
        Instant reckonedFrom = now.minus(office.settings().soil().runUp());
        if (dug.isBefore(reckonedFrom)) {
            throw Refusal.badInput("A word of " + at + " tells nothing any more: the soil is"
                    + " reckoned from " + shown(reckonedFrom, office) + " on.");
        }
        return new JournalEntry.Said(dug, now, by);
    }

    private static Word seen(String text) {
        List<String> words = Arrays.stream(Word.values()).map(SoilCommand::told).toList();
        String meant = NameMatch.of(text, words)
                .unique()
                .orElseThrow(() -> Refusal.badInput("'" + text + "' is no word for soil here:"
                        + " write one of " + String.join(", ", words) + "."));
        return Word.values()[words.indexOf(meant)];
    }

    private static String told(Word word) {
        return word.name().toLowerCase(Locale.ROOT);
    }

    private static String shown(Instant instant, Office office) {
        return WHEN.format(instant.atZone(office.zone()));
    }
}
