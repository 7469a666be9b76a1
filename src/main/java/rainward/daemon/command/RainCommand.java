package rainward.daemon.command;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.office.Office;
import rainward.daemon.word.GaugeDesk;

/** Takes a gauge reading. */
@Command(
        name = "rain",
        description = {
            "Write down what the gauge of a property held.",
            "",
            "The farm's own gauge outranks every other source for its hours. Safe to repeat; a",
            "later reading for the same hours corrects an earlier one."
        })
public final class RainCommand extends OfficeCommand {

    @Parameters(
            index = "0",
            paramLabel = "PROPERTY",
            description = "The property, or the beginning of its name.")
    String property = "";

    @Parameters(
            index = "1",
            paramLabel = "AMOUNT",
            description = "In the units of the farm, or with its own: 0.45, 0.45in, 11mm.")
    String amount = "";

    @Option(
            names = "--at",
            paramLabel = "TIME",
            description = "When it was read: HH:MM today, or YYYY-MM-DD HH:MM. Else now.")
    @Nullable
    String at;

    @Option(
            names = "--since",
            paramLabel = "TIME",
            description = "When it was last empty. Else a day before it was read.")
    @Nullable
    String since;

    @Option(names = "--by", paramLabel = "NAME", description = "Who read it.")
    String by = "office";

    @Override
    protected int work(Office office) {
        GaugeDesk.Said said = new GaugeDesk.Said(
                property, amount, Optional.ofNullable(at), Optional.ofNullable(since), by);
        GaugeDesk.Reading reading =
                office.store().inTransaction(books -> new GaugeDesk(office).take(books, said));
        show(reading, () -> reading.words(office.settings().farm().units()));
        return 0;
    }
}
