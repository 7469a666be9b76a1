package rainward.daemon.command;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.word.Answer;
import rainward.daemon.word.StageDesk;
import rainward.daemon.yard.UseDesk;
import rainward.store.journal.StageWord;

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

    /** What is said of the stage. */
    abstract StageDesk.Verb verb();

    StageWord.Means means() {
        return StageWord.Means.UNSAID;
    }

    /** What was worked and used. */
    UseDesk.Said use() {
        return UseDesk.Said.NOTHING;
    }

    @Override
    protected int work(Office office) {
        StageDesk.Said said =
                new StageDesk.Said(verb(), field, stage, Optional.ofNullable(at), by, means());
        Answer answer = office.store()
                .inTransaction(books -> new StageDesk(office).take(books, said, use()));
        show(answer, answer::words);
        return answer.refused() ? Refusal.BAD_INPUT : 0;
    }

    /** Marks a stage as done. */
    @Command(
            name = "done",
            description = {
                "Write down that a stage of a field is done.",
                "",
                "Safe to repeat. A stage cannot be done before an earlier one, unless the earlier",
                "one is passed over on purpose.",
                "",
                "With --acres and --used it goes into the book of the shed what was really worked",
                "and used; undoing the stage takes that back too."
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
                names = {"--without", "--passing-over"},
                paramLabel = "STAGE",
                description = "An earlier stage that is left out on purpose; may be repeated.")
        List<String> passingOver = List.of();

        @Option(
                names = {"--acres", "--area"},
                paramLabel = "AREA",
                description = "Ground really worked: 4.5ac or 1.8ha. Else the whole field.")
        @Nullable
        String area;

        @Option(
                names = "--used",
                paramLabel = "WHAT=AMOUNT",
                description = "What was really used: turnip=12lb, urea=300lb; may be repeated.")
        List<String> used = List.of();

        @Option(
                names = "--as-reckoned",
                description = "What the load sheet reckons for that ground was used.")
        boolean asReckoned;

        @Override
        UseDesk.Said use() {
            return new UseDesk.Said(Optional.ofNullable(area), used, asReckoned);
        }

        @Override
        StageWord.Means means() {
            return new StageWord.Means(
                    Optional.ofNullable(machine),
                    Optional.ofNullable(mix),
                    Set.copyOf(passingOver));
        }

        @Override
        StageDesk.Verb verb() {
            return StageDesk.Verb.DONE;
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
        StageDesk.Verb verb() {
            return StageDesk.Verb.START;
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
        StageDesk.Verb verb() {
            return StageDesk.Verb.UNDO;
        }
    }
}
