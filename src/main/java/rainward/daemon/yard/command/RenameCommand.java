package rainward.daemon.yard.command;

import java.time.Instant;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.store.journal.JournalEntry;
import rainward.store.ledger.Renamed;

/** Gives a field another name. */
@Command(
        name = "rename",
        description = {
            "Give a field another name. All that was written about it is read under the new one;",
            "a file that still has the old name updates the same field."
        })
public final class RenameCommand extends OfficeCommand {

    private static final int LONGEST = 80;

    @Parameters(index = "0", paramLabel = "FIELD", description = "The field.")
    String field = "";

    @Parameters(index = "1", paramLabel = "NAME", description = "Its new name.")
    String name = "";

    @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
    String by = "office";

    @Override
    protected int work(Office office) {
        String was = office.fieldNamed(field);
        String now = name.strip();
        if (now.isEmpty()
                || now.length() > LONGEST
                || now.chars().anyMatch(Character::isISOControl)) {
            throw Refusal.badInput("The new name of " + was + " must be 1 to " + LONGEST
                    + " printable characters.");
        }
        Instant at = office.now();
        String words = office.store().inTransaction(books -> {
            if (was.equals(now)) {
                return was + " has that name already.";
            }
            if (!books.fields().rename(was, now)) {
                throw Refusal.badInput(
                        "There is another field \"" + now + "\"; names must differ.");
            }
            books.ledger().add(now, new Renamed(was, now), new JournalEntry.Said(at, at, by));
            return was + " is called " + now + " from now on.";
        });
        show(Map.of("words", words), () -> words);
        return 0;
    }
}
