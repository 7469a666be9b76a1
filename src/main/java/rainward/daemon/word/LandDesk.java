package rainward.daemon.word;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.SurveyDesk;
import rainward.farm.Field;
import rainward.farm.MappedField;
import rainward.farm.Survey;
import rainward.farm.UnitSystem;
import rainward.intake.BoundaryText;
import rainward.intake.FieldTable;
import rainward.intake.InputFault;
import rainward.intake.Intake;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.ledger.Bounded;
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
        return added(books, new FieldTable(SurveyDesk.known(office)).entered(cells), labels);
    }

    /** The same for a field whose boundary is told with it, as GeoJSON. */
    public Answer add(
            Books books, Map<String, String> cells, String geoJson, UnaryOperator<String> labels) {
        return added(books, BoundaryText.entered(SurveyDesk.known(office), cells, geoJson), labels);
    }

    private Answer added(Books books, Intake<Survey> intake, UnaryOperator<String> labels) {
        Intake.Accepted<Survey> accepted = accepted(intake, labels);
        String name = accepted.value().fields().get(0).field().name();
        mustBeFree(books, name);
        books.fields().take(accepted.value(), office.now());
        return Answer.written(name + " is there from now on." + warnings(accepted, labels));
    }

    private static <T> Intake.Accepted<T> accepted(Intake<T> intake, UnaryOperator<String> labels) {
        if (intake instanceof Intake.Rejected<T> rejected) {
            throw Refusal.badInput(
                    rejected.faults().stream().map(f -> words(f, labels)).toList());
        }
        return (Intake.Accepted<T>) intake;
    }

    private static String warnings(Intake.Accepted<?> accepted, UnaryOperator<String> labels) {
        return accepted.warnings().stream()
                .map(fault -> " " + words(fault, labels))
                .collect(Collectors.joining());
    }

    /**
     * Gives a field a boundary, or another one; what was recorded of it stays, the boundary before
     * too.
     *
     * @throws Refusal with every fault
     */
    public Answer bound(Books books, Bound said) {
        Field before = books.fields().named(office.fieldNamed(said.field())).orElseThrow();
        UnitSystem units = office.settings().farm().units();
        String column = units == UnitSystem.US_CUSTOMARY ? "seeded_acres" : "seeded_hectares";
        UnaryOperator<String> labels = name -> name.equals(column) ? "Part to be seeded" : name;
        Map<String, String> cells =
                said.seeded().map(text -> Map.of(column, text)).orElse(Map.of());
        Intake.Accepted<MappedField> drawn =
                accepted(BoundaryText.redrawn(before, cells, said.geoJson()), labels);
        Optional<String> was = books.fields().boundaryOf(before.name());
        Field after = drawn.value().field();
        if (was.equals(drawn.value().boundaryGeoJson()) && after.equals(before)) {
            return Answer.alreadySo(before.name() + " has that boundary already.");
        }
        Instant at = office.now();
        books.fields().bound(drawn.value(), at);
        books.ledger()
                .add(
                        before.name(),
                        new Bounded(before.areaHa(), after.areaHa(), was),
                        new JournalEntry.Said(at, at, said.by()));
        return Answer.written(before.name() + " has "
                + (was.isPresent() ? "another" : "a") + " boundary: "
                + units.area(after.areaHa()) + " to be seeded, " + units.area(before.areaHa())
                + " before." + warnings(drawn, labels));
    }

    /**
     * A boundary as somebody tells it.
     *
     * @param field the beginning of its name is enough
     * @param geoJson as pasted (RFC 7946)
     * @param seeded part of it to be seeded, in the units of the farm; empty: all of it
     * @param by who says so
     */
    public record Bound(String field, String geoJson, Optional<String> seeded, String by) {}

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
