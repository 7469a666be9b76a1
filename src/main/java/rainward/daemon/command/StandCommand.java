package rainward.daemon.command;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.Office;
import rainward.daemon.word.LookDesk;

/** Takes down what came up. */
@Command(
        name = "stand",
        description = {
            "Write down what came up on a seeded field: up, thin or failed.",
            "",
            "It is kept beside the chance that the order gave at seeding, so that `rainward skill`",
            "can tell how good those chances are. A thin or failed field comes back into the order",
            "from the first stage of its recipe, with what is still in season.",
            "",
            "Without a result it tells when to look: when a stand should show, by the weather since",
            "the seed went in and the forecast, and not before rain has done its part."
        })
public final class StandCommand extends OfficeCommand {

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FIELD",
            description = "The field, or the beginning of its name; without it, all seeded ones.")
    @Nullable
    String field;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "RESULT",
            description = "up, thin or failed; without it, when to look.")
    @Nullable
    String result;

    @Option(
            names = "--cause",
            paramLabel = "CAUSE",
            description = "Why: dry, washed, crusted, eaten, weeds, seed or other.")
    @Nullable
    String cause;

    @Option(
            names = "--counted",
            paramLabel = "SHARE",
            description = "Plants counted, as a share of the live seed sown: 0.6 or 60%%.")
    @Nullable
    String counted;

    @Option(names = "--note", paramLabel = "TEXT", description = "Anything else worth keeping.")
    @Nullable
    String note;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            description = "When somebody looked: HH:MM today, or YYYY-MM-DD HH:MM. Else now.")
    @Nullable
    String at;

    @Option(names = "--by", paramLabel = "NAME", description = "Who looked.")
    String by = "office";

    @Override
    protected int work(Office office) {
        if (field == null || result == null) {
            StandDays days = StandDays.of(office, Optional.ofNullable(field));
            show(days, () -> days.text(office));
            return 0;
        }
        LookDesk.Said said = new LookDesk.Said(
                field,
                result,
                new LookDesk.Seen(
                        Optional.ofNullable(cause),
                        Optional.ofNullable(counted),
                        Optional.ofNullable(note)),
                Optional.ofNullable(at),
                by);
        LookDesk.Finding finding =
                office.store().inTransaction(books -> new LookDesk(office).take(books, said));
        show(finding, finding::words);
        return 0;
    }
}
