package rainward.daemon.word;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.SurveyDesk;
import rainward.farm.Survey;
import rainward.intake.FieldTable;
import rainward.intake.InputFault;
import rainward.intake.Intake;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.ledger.Renamed;

/** Where people say that there is another field, that it has another name, or that it is none. */
public final class LandDesk {

    private static final int LONGEST = 80;

    private final Office office;

    public LandDesk(Office office) {
        this.office = office;
    }

    /**
     * Takes a field in that was not there.
     *
     * @param cells as a line of an imported table, by column
     * @param labels turns the name of a column into what stands beside its box
     * @throws Refusal with every fault
     */
    public Answer add(Books books, Map<String, String> cells, UnaryOperator<String> labels) {
        Intake<Survey> intake = new FieldTable(SurveyDesk.known(office)).entered(cells);
        if (intake instanceof Intake.Rejected<Survey> rejected) {
            throw Refusal.badInput(
                    rejected.faults().stream().map(f -> words(f, labels)).toList());
        }
        Intake.Accepted<Survey> accepted = (Intake.Accepted<Survey>) intake;
        String name = accepted.value().fields().get(0).field().name();
        mustBeFree(books, name);
        books.fields().take(accepted.value(), office.now());
        return Answer.written(name + " is there from now on."
                + accepted.warnings().stream()
                        .map(fault -> " " + words(fault, labels))
                        .collect(Collectors.joining()));
    }

    private static void mustBeFree(Books books, String name) {
        Optional<String> holder = books.fields().named(name).isPresent()
                ? Optional.of(name)
                : books.fields().presentName(name);
        holder.ifPresent(field -> {
            throw Refusal.badInput("There is a field \"" + field + "\" already"
                    + (field.equals(name) ? "" : ", which went by that name before")
                    + "; names must differ.");
        });
    }

    private static String words(InputFault fault, UnaryOperator<String> labels) {
        String column = fault.found().split("\\W", 2)[0];
        return labels.apply(column) + fault.found().substring(column.length()) + "; "
                + fault.remedy() + ".";
    }

    /** Gives a field another name; all that was written about it is read under the new one. */
    public Answer rename(Books books, String field, String name, String by) {
        String was = office.fieldNamed(field);
        String now = name.strip();
        if (now.isEmpty()
                || now.length() > LONGEST
                || now.chars().anyMatch(Character::isISOControl)) {
            throw Refusal.badInput("The new name of " + was + " must be 1 to " + LONGEST
                    + " printable characters.");
        }
        if (was.equals(now)) {
            return Answer.alreadySo(was + " has that name already.");
        }
        if (!books.fields().rename(was, now)) {
            throw Refusal.badInput("There is another field \"" + now + "\"; names must differ.");
        }
        Instant at = office.now();
        books.ledger().add(now, new Renamed(was, now), new JournalEntry.Said(at, at, by));
        return Answer.written(was + " is called " + now + " from now on.");
    }

    /**
     * Takes a field out that nothing is recorded about; any other is dropped, and its records stay.
     */
    public Answer remove(Books books, String field) {
        String name = office.fieldNamed(field);
        if (!books.fields().remove(name)) {
            throw Refusal.badInput("There are records of " + name
                    + ", so it is not taken out: drop it, and it leaves the order.");
        }
        return Answer.written(name + " is taken out.");
    }
}
