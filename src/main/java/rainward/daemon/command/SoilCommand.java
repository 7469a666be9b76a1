package rainward.daemon.command;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.word.SoilDesk;

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

    @Override
    protected int work(Office office) {
        if (undo == (word != null)) {
            throw Refusal.badInput("Say what was seen, dry, moist or wet, or give --undo to take"
                    + " the last word back; one of the two.");
        }
        SoilDesk.Said said =
                new SoilDesk.Said(field, Optional.ofNullable(word), Optional.ofNullable(at), by);
        SoilDesk.Told told =
                office.store().inTransaction(books -> new SoilDesk(office).take(books, said));
        show(told, told::words);
        return 0;
    }
}
