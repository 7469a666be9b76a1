package rainward.daemon.yard;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Quantity;
import rainward.input.lime.LimeQuality;
import rainward.input.stock.StockEntry;
import rainward.store.Books;
import rainward.store.ledger.LedgerLine;

/** What may lie in the shed, by name, and how much of it a person means. */
public record Items(Office office) {

    private static final Pattern BAGS = Pattern.compile("([0-9]*\\.?[0-9]+)\\s*bags?");

    /** Species of the mixes, products and limes of the settings, and what was written before. */
    public List<String> known(Books books) {
        Stream<String> species = office.mixes().values().stream()
                .flatMap(mix -> mix.components().stream())
                .map(component -> component.species().name());
        Stream<String> bought = Stream.concat(
                office.settings().inputs().products().stream()
                        .map(offer -> offer.product().name()),
                office.settings().inputs().limes().stream().map(LimeQuality::name));
        Stream<String> written = books.ledger().all(StockEntry.class).stream()
                .map(LedgerLine::entry)
                .map(StockEntry::item);
        return Stream.of(species, bought, written)
                .flatMap(names -> names)
                .distinct()
                .sorted()
                .toList();
    }

    /**
     * The item that a person means by the beginning of its name.
     *
     * @throws Refusal that says what would be right
     */
    public String named(Books books, String text) {
        return NameMatch.of(text, known(books)).orRefuse("item");
    }

    /** A weight: {@code 300 lb}, {@code 12 bags}, or a number in the units of the farm [kg]. */
    public double massKg(String item, String text) {
        Matcher bags = BAGS.matcher(text.strip().toLowerCase(Locale.ROOT));
        if (bags.matches()) {
            return Double.parseDouble(bags.group(1))
                    * office.settings().inputs().shed().bagKg(item);
        }
        return Typed.amount(item, text, Quantity.MASS, office.settings().farm().units());
    }
}
