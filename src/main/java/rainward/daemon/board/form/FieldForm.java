package rainward.daemon.board.form;

import static rainward.daemon.board.form.Kinds.Key.amount;
import static rainward.daemon.board.form.Kinds.Key.anyOf;
import static rainward.daemon.board.form.Kinds.Key.oneOf;
import static rainward.daemon.board.form.Kinds.Key.text;
import static rainward.daemon.board.form.Kinds.Key.words;

import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rainward.board.house.Entry;
import rainward.daemon.board.form.Kinds.Key;
import rainward.daemon.office.Office;
import rainward.daemon.office.SurveyDesk;
import rainward.daemon.word.Answer;
import rainward.daemon.word.LandDesk;
import rainward.farm.UnitSystem;
import rainward.intake.KnownNames;
import rainward.store.Books;

/** A field that is not there yet, told by form as an imported table tells it. */
public final class FieldForm {

    /** Names it among the things that are added by form. */
    public static final String KIND = "field";

    private static final String BOUNDARY = "boundary";
    private static final String FALLBACKS = "fallback_mixes";

    private final Office office;

    public FieldForm(Office office) {
        this.office = office;
    }

    Entry.Group group() {
        return new Entry.Group(KIND, "Fields", Set.of(), false);
    }

    /** An empty form. */
    Entry form() {
        EntryForms empty = new EntryForms("");
        List<Entry.Item> items = keys().stream()
                .map(key -> empty.item(key, MissingNode.getInstance()))
                .toList();
        return new Entry(KIND, Optional.empty(), "A new field", items, false);
    }

    private List<Key> keys() {
        KnownNames known = SurveyDesk.known(office);
        boolean us = office.settings().farm().units() == UnitSystem.US_CUSTOMARY;
        return List.of(
                words("name", "Name", "as the crew says it, for instance NF6 Back Lot"),
                words("property", "Property", "one of the farm's, or a new one"),
                text(
                        BOUNDARY,
                        "Boundary",
                        "GeoJSON, if there is one; then latitude, longitude and area may stay"
                                + " empty: " + BoundaryForm.HINT),
                amount("latitude", "Latitude", "of a point in the field, for instance 42.152"),
                amount("longitude", "Longitude", "west is below 0, for instance -84.512"),
                amount(
                        us ? "acres" : "hectares",
                        us ? "Area in acres" : "Area in hectares",
                        "that is to be seeded"),
                oneOf("texture", "Soil", "unknown: loam until the soil survey is taken")
                        .from(soils(known)),
                amount("organic_matter_percent", "Organic matter, percent", "left open: the usual"),
                amount("slope_percent", "Slope, percent", "left open: the usual"),
                oneOf("mix", "Mix that is wanted", "").from(some(known.mixes())),
                anyOf(FALLBACKS, "Mixes that would do", "").from(some(known.mixes())),
                oneOf("recipe", "Recipe", "").from(some(known.recipes())),
                amount("priority", "Priority", "left open: 1, the usual"));
    }

    private static String[] soils(KnownNames known) {
        return Stream.concat(
                        Stream.of("unknown"),
                        Choices.sorted(known.textures().byName().keySet()).stream())
                .toArray(String[]::new);
    }

    private static String[] some(Iterable<String> names) {
        return Choices.sorted(names).toArray(String[]::new);
    }

    /** Takes the field in, with the checks of an import. */
    public Answer add(Books books, Map<String, String> parts) {
        Map<String, String> cells = new LinkedHashMap<>();
        for (Key key : keys()) {
            cells.put(
                    key.path(),
                    key.path().equals(FALLBACKS)
                            ? String.join(";", Wording.ticked(FALLBACKS, parts))
                            : Wording.typed(key, parts));
        }
        String boundary = cells.remove(BOUNDARY);
        return boundary == null || boundary.isEmpty()
                ? new LandDesk(office).add(books, cells, this::label)
                : new LandDesk(office).add(books, withBoundary(cells), boundary, this::label);
    }

    /** An area beside a boundary is the part of it that is to be seeded. */
    private static Map<String, String> withBoundary(Map<String, String> cells) {
        Map<String, String> told = new LinkedHashMap<>(cells);
        for (String unit : List.of("acres", "hectares")) {
            Optional.ofNullable(told.remove(unit))
                    .ifPresent(area -> told.put(BoundaryForm.SEEDED + unit, area));
        }
        return told;
    }

    private String label(String column) {
        return keys().stream()
                .filter(key -> column.equals(key.path())
                        || column.equals(BoundaryForm.SEEDED + key.path()))
                .map(Key::label)
                .findFirst()
                .orElse(column);
    }
}
