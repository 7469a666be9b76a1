package rainward.daemon.command;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.daemon.office.Office;
import rainward.daemon.office.OutboxSheet;
import rainward.daemon.office.Refusal;
import rainward.farm.DayClock;
import rainward.store.Books;

/** Shows the mail that waits, and what became of the rest. */
@Command(
        name = "outbox",
        description = {
            "Print the mail that waits and that of the last week, with what became of it.",
            "",
            "Mail that a server refused or that was given up can be tried again; mail that waits",
            "can be taken out."
        })
public final class OutboxCommand extends OfficeCommand {

    /** One change or none. */
    static final class Change {

        @Option(names = "--retry", paramLabel = "ID", description = "Try this one again at once.")
        @Nullable
        Long retry;

        @Option(names = "--drop", paramLabel = "ID", description = "Take this one out.")
        @Nullable
        Long drop;
    }

    @ArgGroup
    Change change = new Change();

    @Override
    protected int work(Office office) {
        Long retry = change.retry;
        Long drop = change.drop;
        if (retry != null) {
            changed(
                    office,
                    retry,
                    (books, now) -> books.outbox()
                            .retry(retry, now, now.plus(office.settings().mail().triedFor())));
        } else if (drop != null) {
            changed(office, drop, (books, now) -> books.outbox().drop(drop, now));
        }
        List<OutboxSheet> lines = OutboxSheet.of(office);
        show(lines, () -> text(lines, office.dayClock()));
        return 0;
    }

    /** Changes one message; false where it was sent before. */
    private interface Step {
        boolean take(Books books, Instant now);
    }

    private static void changed(Office office, long id, Step step) {
        Instant now = office.now();
        office.store().inTransaction(books -> {
            if (books.outbox().row(id).isEmpty()) {
                throw Refusal.badInput(
                        "There is no message " + id + ": see the numbers with `rainward outbox`.");
            }
            if (!step.take(books, now)) {
                throw Refusal.badInput(
                        "Message " + id + " was sent already; that cannot be changed.");
            }
            return id;
        });
    }

    private static String text(List<OutboxSheet> lines, DayClock clock) {
        if (lines.isEmpty()) {
            return "Nothing waits, and nothing was written in the last week.";
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("id", "state", "written", "tries", "to", "subject", "said last"));
        lines.forEach(line -> rows.add(List.of(
                String.valueOf(line.id()),
                line.state(),
                clock.dateTime(line.writtenAt().toInstant()),
                String.valueOf(line.tries()),
                line.recipient(),
                line.subject(),
                line.lastWords())));
        return Sheets.columns(rows);
    }
}
