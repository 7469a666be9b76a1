package rainward.daemon.word;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Field;
import rainward.farm.Quantity;
import rainward.farm.Recipe;
import rainward.farm.UnitSystem;
import rainward.store.Books;

/** Where people say what a field is and what is wanted there; checked as an import is. */
public final class WishDesk {

    private static final double LEAST_HA = 0.01;
    private static final double MOST_HA = 500;

    private final Office office;

    public WishDesk(Office office) {
        this.office = office;
    }

    /**
     * What is wanted, as typed; what is left out stays as it is.
     *
     * @param field the beginning of its name is enough
     * @param area in the units of the farm, or with its own
     * @param priority 0.01 to 100
     * @param recipe of the settings
     * @param mixes the wanted one first, commas between
     */
    public record Said(
            String field,
            Optional<String> area,
            Optional<String> priority,
            Optional<String> recipe,
            Optional<String> mixes) {}

    /** Changes the field. */
    public Answer take(Books books, Said said) {
        Field before = books.fields().named(office.fieldNamed(said.field())).orElseThrow();
        Field.Wish wish = new Field.Wish(
                said.mixes().map(this::mixes).orElse(before.wish().mixes()),
                said.recipe().map(this::recipe).orElse(before.wish().recipe()),
                said.priority()
                        .map(text -> number(text, "priority", 0.01, 100))
                        .orElse(before.wish().priority()));
        double areaHa = said.area().map(text -> area(text, before)).orElse(before.areaHa());
        Field after = new Field(
                before.name(), before.property(), before.place(), areaHa, before.ground(), wish);
        if (after.equals(before)) {
            return Answer.alreadySo(before.name() + " is so already.");
        }
        books.fields().change(after, office.now());
        return Answer.written(before.name() + " is changed.");
    }

    /** What the box was filled with counts as unchanged, however it was rounded. */
    private double area(String text, Field before) {
        UnitSystem units = office.settings().farm().units();
        String plain = text.strip();
        if (plain.equals(units.area(before.areaHa()))) {
            return before.areaHa();
        }
        boolean acres = plain.endsWith("ac");
        boolean hectares = plain.endsWith("ha");
        UnitSystem meant = acres ? UnitSystem.US_CUSTOMARY : hectares ? UnitSystem.METRIC : units;
        double shown = number(plain.replaceFirst("\\s*(ac|ha)$", ""), "area", 0, 100_000);
        double areaHa = meant.inside(Quantity.AREA, shown);
        if (areaHa < LEAST_HA || areaHa > MOST_HA) {
            throw Refusal.badInput("An area of " + text + " is none of a field: write "
                    + units.area(LEAST_HA) + " to " + units.area(MOST_HA) + ".");
        }
        return areaHa;
    }

    private static double number(String text, String what, double least, double most) {
        try {
            double number = Double.parseDouble(text.strip());
            if (number >= least && number <= most) {
                return number;
            }
        } catch (NumberFormatException e) {
            // Told below, with what would be right.
        }
        throw Refusal.badInput("'" + text + "' is no " + what + ": write a number from " + least
                + " to " + most + ".");
    }

    private String recipe(String text) {
        List<String> known =
                office.settings().work().recipes().stream().map(Recipe::name).toList();
        return NameMatch.of(text, known).orRefuse("recipe");
    }

    private List<String> mixes(String text) {
        List<String> known = List.copyOf(office.mixes().keySet());
        return Arrays.stream(text.split(","))
                .filter(name -> !name.isBlank())
                .map(name -> NameMatch.of(name.strip(), known).orRefuse("mix"))
                .distinct()
                .toList();
    }
}
