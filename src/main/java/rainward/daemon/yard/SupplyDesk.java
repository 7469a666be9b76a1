package rainward.daemon.yard;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.brief.Brief.LoadLine;
import rainward.daemon.office.Office;
import rainward.daemon.settings.InputSettings;
import rainward.daemon.yard.spread.SpreadDesk;
import rainward.farm.Field;
import rainward.farm.MixComponent;
import rainward.farm.Operation;
import rainward.farm.UnitSystem;
import rainward.input.Gap;
import rainward.input.load.FillCount;
import rainward.input.load.LoadSheet;
import rainward.input.load.Supplies;
import rainward.input.record.Applied;
import rainward.input.record.TagRead;
import rainward.input.seed.SeedLot;
import rainward.input.seed.SeedTag;
import rainward.input.seeder.SettingRecord;
import rainward.input.spread.FieldSpread;
import rainward.input.stock.Stock;
import rainward.input.stock.StockEntry;
import rainward.intake.InputTables;
import rainward.intake.TableFolder;
import rainward.queue.problem.Fillings;
import rainward.queue.problem.Plan;
import rainward.store.Books;
import rainward.store.ledger.LedgerLine;

/** Where tags, stock, settings tried and lime owed become what a load sheet is made of. */
public final class SupplyDesk {

    private final Office office;
    private final InputTables tables = new InputTables(TableFolder.onClassPath());

    public SupplyDesk(Office office) {
        this.office = office;
    }

    /**
     * All that a load sheet needs beside the plan.
     *
     * @param supplies what goes on the trucks is taken from
     * @param spread lime and fertilizer of every field, with what is not known of them
     */
    record Given(Supplies supplies, List<FieldSpread> spread) {}

    /** The load sheet of a day under a plan. */
    public LoadSheet sheet(Books books, Plan plan, LocalDate day) {
        return sheet(books, plan, day, given(books, day));
    }

    /** The same, where what it needs has been put together already. */
    LoadSheet sheet(Books books, Plan plan, LocalDate day, Given given) {
        LoadSheet sheet = LoadSheet.of(day, plan, given.supplies());
        List<Gap> gaps = new ArrayList<>(sheet.gaps());
        Stock stock = stock(books);
        gaps.addAll(stock.gaps());
        gaps.addAll(spreadGaps(sheet, given.spread()));
        gaps.addAll(new SprayDesk(office).stops(books, sheet));
        sheet.totals().stream()
                .filter(total -> !stock.onHandKg().containsKey(total.what()))
                .forEach(total -> gaps.add(neverCounted(total.what())));
        Map<String, TagRead> tags = newestTags(books);
        sheet.totals().stream()
                .flatMap(total -> Optional.ofNullable(tags.get(total.what())).stream())
                .filter(tag -> tag.isOld(day))
                .forEach(tag -> gaps.add(oldTag(tag)));
        return new LoadSheet(
                day, sheet.machines(), sheet.totals(), gaps.stream().distinct().toList());
    }

    /** What is not known of the fields that are spread on this day. */
    private static List<Gap> spreadGaps(LoadSheet sheet, List<FieldSpread> all) {
        Set<String> spread = sheet.machines().stream()
                .flatMap(machine -> machine.lines().stream())
                .filter(line -> line.item().place().operation() == Operation.SPREAD)
                .map(line -> line.item().place().field())
                .collect(Collectors.toSet());
        return all.stream()
                .filter(one -> spread.contains(one.asked().plot().field()))
                .flatMap(one -> one.gaps().stream())
                .toList();
    }

    private static Gap neverCounted(String item) {
        return new Gap(
                item,
                "nothing of it stands in the book of the shed",
                "count it: rainward stock count \"" + item + "\" AMOUNT");
    }

    private static Gap oldTag(TagRead tag) {
        return new Gap(
                tag.species(),
                "germination on the tag is of " + tag.testedOn() + ", more than "
                        + TagRead.TEST_HOLDS_MONTHS + " months old",
                "have the lot tested again, or count what sprouts of 100 seeds");
    }

    /** Totals in the units of the shed: bags for seed that comes in bags, weight for the rest. */
    public static List<LoadLine> lines(LoadSheet sheet, UnitSystem units) {
        return sheet.totals().stream()
                .map(total -> new LoadLine(total.what(), amount(total, units)))
                .toList();
    }

    private static String amount(LoadSheet.Total total, UnitSystem units) {
        String mass = units.mass(total.needKg() + total.spareKg());
        return total.pull()
                .map(pull -> mass
                        + (pull.wholeBags() > 0 ? ", " + bags(pull.wholeBags()) : "")
                        + (pull.openedKg() > 0
                                ? " + " + units.mass(pull.openedKg()) + " loose"
                                : "")
                        + (pull.shortKg() > 0 ? ", SHORT " + units.mass(pull.shortKg()) : ""))
                .orElse(mass);
    }

    private static String bags(int count) {
        return count + (count == 1 ? " bag" : " bags");
    }

    /** Puts together what a load sheet needs; lime and fertilizer are worked out once. */
    Given given(Books books, LocalDate day) {
        List<FieldSpread> spread = new SpreadDesk(office).all(books, day);
        return new Given(supplies(books, spread), spread);
    }

    /** How fields empty machines, by field: the count that load sheets show. */
    public Map<String, Fillings> fillings(Books books, LocalDate day) {
        Supplies supplies = given(books, day).supplies();
        FillCount count = new FillCount(supplies);
        return supplies.fields().values().stream()
                .collect(Collectors.toMap(Field::name, count::of));
    }

    private Supplies supplies(Books books, List<FieldSpread> spread) {
        Map<String, Field> fields = books.fields().all().stream()
                .collect(Collectors.toMap(Field::name, Function.identity()));
        InputSettings inputs = office.settings().inputs();
        Map<String, List<Supplies.Spread>> spreads = new HashMap<>();
        spread.forEach(one -> spreads.put(one.asked().plot().field(), one.spreads()));
        return new Supplies(
                office.roster(),
                fields,
                lots(books),
                spreads,
                new Supplies.Gear(
                        inputs.gear().boxes(),
                        inputs.gear().spreaders(),
                        tables.bulkDensity(),
                        settings(books)));
    }

    /** Settings that were measured. */
    public List<SettingRecord> settings(Books books) {
        return books.ledger().all(SettingRecord.class).stream()
                .map(LedgerLine::entry)
                .toList();
    }

    /** The newest tag of each species. */
    public Map<String, TagRead> newestTags(Books books) {
        Map<String, TagRead> tags = new HashMap<>();
        books.ledger()
                .all(TagRead.class)
                .forEach(line -> tags.put(line.entry().species(), line.entry()));
        return tags;
    }

    /** What those tags say, by species. */
    Map<String, SeedTag> tags(Books books) {
        return newestTags(books).values().stream()
                .collect(Collectors.toMap(TagRead::species, TagRead::tag));
    }

    /** What is in the shed: counts and deliveries, less what was used. */
    public Stock stock(Books books) {
        return Stock.of(book(books));
    }

    /** The book of the shed: what was counted, what came, what work used. */
    public List<StockEntry> book(Books books) {
        Stream<StockEntry> said =
                books.ledger().all(StockEntry.class).stream().map(LedgerLine::entry);
        Stream<StockEntry> used = books.ledger().all(Applied.class).stream()
                .flatMap(line -> line.entry().used().stream()
                        .map(u -> new StockEntry(
                                u.item(), line.said().at(), StockEntry.Kind.USED, u.massKg())));
        return Stream.concat(said, used).toList();
    }

    /** Seed in the shed, for every species that a mix may ask for. */
    public Map<String, SeedLot> lots(Books books) {
        Stock stock = stock(books);
        Map<String, TagRead> tags = newestTags(books);
        return office.mixes().values().stream()
                .flatMap(mix -> mix.components().stream())
                .map(MixComponent::species)
                .map(species -> species.name())
                .distinct()
                .collect(Collectors.toMap(
                        Function.identity(),
                        species -> lot(
                                species,
                                Optional.ofNullable(tags.get(species)),
                                stock.of(species))));
    }

    /** What is not a whole bag lies in an opened one. */
    private SeedLot lot(String species, Optional<TagRead> tag, double onHandKg) {
        double bagKg = office.settings().inputs().shed().bagKg(species);
        int whole = (int) Math.floor(onHandKg / bagKg + 1e-6);
        return new SeedLot(
                species,
                tag.map(TagRead::tag),
                bagKg,
                whole,
                Math.max(0, onHandKg - whole * bagKg));
    }
}
