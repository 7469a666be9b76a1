package rainward.daemon.yard.command;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.command.Sheets;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.word.Moments;
import rainward.daemon.yard.LoadDesk;
import rainward.daemon.yard.StockDesk;
import rainward.input.stock.StockEntry;
import rainward.store.journal.JournalEntry;

/** Says what is in the shed. */
@Command(
        name = "stock",
        description = {
            "What is in the shed, what work took from it, and what runs short on which day under",
            "the order in force, with the last day to order.",
            "",
            "A mistake is put right by counting again."
        },
        subcommands = {StockCommand.Count.class, StockCommand.Receive.class})
public final class StockCommand extends OfficeCommand {

    @Override
    protected int work(Office office) {
        LoadDesk loads = new LoadDesk(office);
        StockDesk.Shed shed = new StockDesk(office).shed(loads.plan(loads.today()));
        show(shed, () -> text(shed));
        return 0;
    }

    private static String text(StockDesk.Shed shed) {
        if (shed.items().isEmpty()) {
            return "Nothing stands in the book of the shed: count it with `rainward stock count"
                    + " ITEM AMOUNT`, or take a table in with `rainward enter stock FILE`.";
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("item", "in the shed", "used", "plan takes", ""));
        for (StockDesk.Line line : shed.items()) {
            rows.add(List.of(
                    line.item(),
                    line.onHand() + " " + line.unit()
                            + (line.wholeBags() > 0 ? " (" + line.wholeBags() + " bags)" : ""),
                    line.used() + " " + line.unit(),
                    line.planned() + " " + line.unit(),
                    line.runsOutOn().isPresent() ? line.words() : ""));
        }
        StringBuilder text = new StringBuilder(Sheets.columns(rows));
        if (!shed.gaps().isEmpty()) {
            text.append(System.lineSeparator()).append(System.lineSeparator()).append("NOT KNOWN");
            shed.gaps()
                    .forEach(gap ->
                            text.append(System.lineSeparator()).append("  ").append(gap.text()));
        }
        return text.toString();
    }

    /** A line for the book of the shed. */
    abstract static class Entry extends OfficeCommand {

        @Parameters(index = "0", paramLabel = "ITEM", description = "Species, product or lime.")
        String item = "";

        @Parameters(
                index = "1",
                paramLabel = "AMOUNT",
                description = "How much: \"12 bags\", 300lb or 140kg.")
        String amount = "";

        @Option(names = "--at", paramLabel = "TIME", description = "When; else now.")
        @Nullable
        String at;

        @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
        String by = "office";

        abstract StockEntry.Kind kind();

        @Override
        protected int work(Office office) {
            Instant now = office.now();
            Instant then = Optional.ofNullable(at)
                    .map(text -> Moments.of(
                            text, LocalDate.ofInstant(now, office.zone()), office.zone()))
                    .orElse(now);
            if (then.isAfter(now)) {
                throw Refusal.badInput("--at is '" + at + "', which is still to come.");
            }
            String words = new StockDesk(office)
                    .write(kind(), item, amount, new JournalEntry.Said(then, now, by));
            show(Map.of("words", words), () -> words);
            return 0;
        }
    }

    /** Somebody counted or weighed. */
    @Command(
            name = "count",
            description = "Write down what was counted: from here on this is what is there.")
    public static final class Count extends Entry {
        @Override
        StockEntry.Kind kind() {
            return StockEntry.Kind.COUNTED;
        }
    }

    /** A delivery came. */
    @Command(name = "receive", description = "Write down what was delivered.")
    public static final class Receive extends Entry {
        @Override
        StockEntry.Kind kind() {
            return StockEntry.Kind.RECEIVED;
        }
    }
}
