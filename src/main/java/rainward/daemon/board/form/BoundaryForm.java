package rainward.daemon.board.form;

import static rainward.daemon.board.form.Kinds.Key.amount;
import static rainward.daemon.board.form.Kinds.Key.text;

import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.board.house.Entry;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.word.Answer;
import rainward.daemon.word.LandDesk;
import rainward.farm.Field;
import rainward.farm.UnitSystem;
import rainward.intake.BoundaryText;
import rainward.store.Books;

/** The boundary of a field that is there, entered or replaced with the checks of an import. */
public final class BoundaryForm {

    /** Names it among the things that are changed by form. */
    public static final String KIND = Entry.BOUNDARY;

    /** Before the unit, names the column of an import that tells the part to be seeded. */
    static final String SEEDED = "seeded_";

    static final String HINT = "a Polygon in longitude and latitude (WGS84), as a map program"
            + " exports it, up to 60 KB";

    private final Office office;

    public BoundaryForm(Office office) {
        this.office = office;
    }

    /** The form of a field, with the boundary that it has. */
    Optional<Entry> form(String name) {
        return office.store()
                .read(books -> books.fields()
                        .named(name)
                        .map(field -> form(field, books.fields().boundaryOf(name))));
    }

    private Entry form(Field field, Optional<String> boundary) {
        UnitSystem units = office.settings().farm().units();
        OptionalDouble holdsHa = boundary.map(BoundaryText::areaHa).orElse(OptionalDouble.empty());
        EntryForms forms = new EntryForms("");
        String has = holdsHa.isPresent()
                ? "It holds " + units.area(holdsHa.getAsDouble()) + ", of which "
                        + units.area(field.areaHa()) + " are seeded. "
                : "There is none yet; " + units.area(field.areaHa()) + " are seeded. ";
        Entry.Item edge = forms.item(
                text("boundary", "Boundary, as GeoJSON", has + "Right is " + HINT + "."),
                TextNode.valueOf(boundary.orElse("")));
        Entry.Item part = forms.item(seeded(), TextNode.valueOf(""));
        return new Entry(
                KIND,
                Optional.of(field.name()),
                "Boundary of " + field.name(),
                List.of(unsent(edge), part),
                false);
    }

    /** What was there is long and is not asked for again. */
    private static Entry.Item unsent(Entry.Item item) {
        return new Entry.Item(item.key(), item.label(), item.hint(), "", item.boxes());
    }

    private Kinds.Key seeded() {
        boolean us = office.settings().farm().units() == UnitSystem.US_CUSTOMARY;
        return amount(
                SEEDED + (us ? "acres" : "hectares"),
                us ? "Part to be seeded, in acres" : "Part to be seeded, in hectares",
                "left open: all that the boundary holds");
    }

    /** Keeps the boundary. */
    public Answer keep(Books books, Map<String, String> parts, String by) {
        String field = parts.getOrDefault("name@entry", "");
        Kinds.Key seeded = seeded();
        Optional<String> geoJson = Optional.ofNullable(parts.get("boundary"));
        Optional<String> part = Optional.of(Wording.typed(seeded, parts));
        return new LandDesk(office)
                .bound(
                        books,
                        new LandDesk.Bound(
                                field,
                                geoJson.orElseThrow(
                                        () -> Refusal.badInput("Give a boundary: " + HINT + ".")),
                                part.filter(text -> !text.isEmpty()),
                                by));
    }
}
