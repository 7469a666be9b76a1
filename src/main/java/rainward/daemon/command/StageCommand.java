package rainward.daemon.command;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Field;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.store.journal.StageJournal;
import rainward.store.journal.StageWord;
import rainward.store.journal.Verdict;

/** What done and undo share: a word about a stage of a field, written into the journal. */
public abstract class StageCommand extends OfficeCommand {

    @Parameters(
            index = "0",
            paramLabel = "FIELD",
            description = "The field, or the beginning of its name.")
    String field = "";

    @Parameters(
            index = "1",
            paramLabel = "STAGE",
            description = "The stage of its recipe, or the beginning of its name.")
    String stage = "";

    @Option(
            names = "--at",
            paramLabel = "TIME",
            description = "When: HH:MM today, or YYYY-MM-DD HH:MM, local time. Else now.")
    @Nullable
    String at;

    @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
    String by = "office";

    /**
     * What came of it, as JSON shows it.
     *
     * @param outcome written, already so or refused
     * @param words for the person
     */
    record Answer(String outcome, String words) {

        static Answer of(Verdict verdict) {
            String outcome = verdict instanceof Verdict.Written
                    ? "written"
                    : verdict instanceof Verdict.AlreadySo ? "already so" : "refused";
            return new Answer(outcome, verdict.words());
        }
    }

    /** Writes the word down. */
    abstract Verdict write(StageJournal journal, StageWord word, Known known);

    /** Field and recipe that the word is about. */
    record Known(Field field, Recipe recipe) {}

    StageWord.Means means() {
        return new StageWord.Means(Optional.empty(), Optional.empty(), Set.of());
    }

    @Override
    int work(Office office) {
        String name = office.fieldNamed(field);
        Field known = office.store().read(books -> books.fields().named(name)).orElseThrow();
        Recipe recipe = office.roster()
                .recipeOf(known)
                .orElseThrow(() -> Refusal.badInput(name + " has the recipe '"
                        + known.wish().recipe() + "', which the settings do not know: add it there,"
                        + " or import the field with one of theirs."));
        List<String> stages = recipe.stages().stream().map(Stage::name).toList();
        StageWord word = new StageWord(
                name,
                NameMatch.of(stage, stages).orRefuse("stage of " + name),
                said(office),
                means());
        Verdict verdict = office.store()
                .inTransaction(books -> write(books.journal(), word, new Known(known, recipe)));
        Answer answer = Answer.of(verdict);
        show(answer, answer::words);
        return verdict instanceof Verdict.Refused ? Refusal.BAD_INPUT : 0;
    }

    private StageWord.Said said(Office office) {
        ZonedDateTime now = office.now().atZone(office.zone());
        Instant when = at == null ? now.toInstant() : moment(at, now.toLocalDate(), office.zone());
        return new StageWord.Said(when.atZone(office.zone()), now, by);
    }

    /** A local time of today, or of the day that is given with it. */
    static Instant moment(String text, LocalDate today, ZoneId zone) {
        try {
            String plain = text.strip().replace('T', ' ');
            LocalDateTime local = plain.length() <= 5
                    ? today.atTime(LocalTime.parse(plain))
                    : plain.length() <= 10
                            ? LocalDate.parse(plain).atTime(LocalTime.NOON)
                            : LocalDateTime.parse(plain.replace(' ', 'T'));
            return local.atZone(zone).toInstant();
        } catch (DateTimeException e) {
            throw Refusal.badInput("'" + text + "' is no time: write 14:30, 2026-07-14 or"
                    + " \"2026-07-14 14:30\", local time.");
        }
    }

    /** Marks a stage as done. */
    @Command(
            name = "done",
            description = {
                "Write down that a stage of a field is done.",
                "",
                "Safe to repeat. A stage cannot be done before an earlier one, unless the earlier",
                "one is passed over on purpose."
            })
    public static final class Done extends StageCommand {

        @Option(names = "--machine", paramLabel = "NAME", description = "Which machine did it.")
        @Nullable
        String machine;

        @Option(
                names = "--mix",
                paramLabel = "NAME",
                description = "What went into the ground, if not the mix wanted there.")
        @Nullable
        String mix;

        @Option(
                names = "--passing-over",
                paramLabel = "STAGE",
                description = "An earlier stage that is left out on purpose; may be repeated.")
        List<String> passingOver = List.of();

        @Override
        StageWord.Means means() {
            return new StageWord.Means(
                    Optional.ofNullable(machine),
                    Optional.ofNullable(mix),
                    Set.copyOf(passingOver));
        }

        @Override
        Verdict write(StageJournal journal, StageWord word, Known known) {
            return journal.done(word, known.field(), known.recipe());
        }
    }

    /** Marks the start of a stage. */
    @Command(
            name = "start",
            description = {
                "Write down that a stage of a field is under way.",
                "",
                "Work under way is never put in another order. Safe to repeat."
            })
    public static final class Start extends StageCommand {

        @Override
        Verdict write(StageJournal journal, StageWord word, Known known) {
            return journal.started(word, known.field(), known.recipe());
        }
    }

    /** Takes a stage back. */
    @Command(
            name = "undo",
            description = {
                "Take back what was said about a stage of a field.",
                "",
                "Nothing is wiped out: the correction is an entry of its own. Safe to repeat."
            })
    public static final class Undo extends StageCommand {

        @Override
        Verdict write(StageJournal journal, StageWord word, Known known) {
            return journal.undo(word, known.field(), known.recipe());
        }
    }
}
