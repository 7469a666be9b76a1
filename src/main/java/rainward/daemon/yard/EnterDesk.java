package rainward.daemon.yard;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Field;
import rainward.input.stock.StockEntry;
import rainward.intake.Entered;
import rainward.intake.InputFault;
import rainward.intake.InputTables;
import rainward.intake.Intake;
import rainward.intake.RecordTable;
import rainward.intake.TableFolder;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.ledger.LedgerLine;

/** Where tables of soil tests, tags, harvests, stock and sprays go into the ledger. */
public final class EnterDesk {

    private final Office office;

    public EnterDesk(Office office) {
        this.office = office;
    }

    /**
     * What came of a table.
     *
     * @param written lines that are new
     * @param known lines that stood there already
     * @param warnings what is doubtful
     */
    public record Took(int written, int known, List<String> warnings) {
        public Took {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Takes a table in whole; the same line twice stands there once.
     *
     * @throws Refusal with every fault
     */
    public Took take(Path file, RecordTable.Kind kind, String by) {
        return each(file, kind, by, EnterDesk::add);
    }

    /**
     * Takes the lines of a table back; they stay on disk and do not count any more.
     *
     * @return lines taken back, and those that did not stand there
     * @throws Refusal with every fault
     */
    public Took takeBack(Path file, RecordTable.Kind kind, String by) {
        return each(file, kind, by, EnterDesk::remove);
    }

    /** What is done with a line; false where there is nothing to do. */
    private interface Step {
        boolean take(Books books, Entered entered, JournalEntry.Said said);
    }

    private Took each(Path file, RecordTable.Kind kind, String by, Step step) {
        return office.store().inTransaction(books -> {
            RecordTable table = new RecordTable(names(books), office.zone());
            Intake<List<Entered>> intake = table.read(file, kind);
            if (intake instanceof Intake.Accepted<List<Entered>> accepted) {
                return each(books, accepted, by, step);
            }
            throw Refusal.badInput(((Intake.Rejected<List<Entered>>) intake)
                    .faults().stream().map(InputFault::words).toList());
        });
    }

    private RecordTable.Names names(Books books) {
        return new RecordTable.Names(
                books.fields().all().stream().map(Field::name).toList(),
                office.mixes().values().stream()
                        .flatMap(mix -> mix.components().stream())
                        .map(component -> component.species().name())
                        .distinct()
                        .toList(),
                new Items(office).known(books),
                List.copyOf(new InputTables(TableFolder.onClassPath())
                        .cropRemovals()
                        .keySet()));
    }

    private Took each(Books books, Intake.Accepted<List<Entered>> accepted, String by, Step step) {
        Instant now = office.now();
        int written = 0;
        int known = 0;
        for (Entered entered : accepted.value()) {
            Instant at = entered.entry() instanceof StockEntry stock
                    ? stock.at()
                    : entered.on().atStartOfDay(office.zone()).toInstant();
            if (at.isAfter(now)) {
                throw Refusal.badInput(entered.line() + ": " + entered.on()
                        + " is still to come; write a day that has passed.");
            }
            boolean isNew = step.take(books, entered, new JournalEntry.Said(at, now, by));
            written += isNew ? 1 : 0;
            known += isNew ? 0 : 1;
        }
        return new Took(
                written,
                known,
                accepted.warnings().stream().map(InputFault::words).toList());
    }

    private static boolean add(Books books, Entered entered, JournalEntry.Said said) {
        if (standing(books, entered.entry().getClass(), entered).isPresent()) {
            return false;
        }
        Optional<String> field = entered.field();
        if (field.isPresent()) {
            books.ledger().add(field.get(), entered.entry(), said);
        } else {
            books.ledger().add(entered.entry(), said);
        }
        return true;
    }

    private static boolean remove(Books books, Entered entered, JournalEntry.Said said) {
        return standing(books, entered.entry().getClass(), entered)
                .filter(line -> books.ledger().undo(line, said))
                .isPresent();
    }

    private static <T> Optional<Long> standing(Books books, Class<T> type, Entered entered) {
        return books.ledger()
                .same(type, entered.field(), type.cast(entered.entry()))
                .map(LedgerLine::id);
    }
}
