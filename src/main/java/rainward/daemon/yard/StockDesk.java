package rainward.daemon.yard;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.daemon.office.Office;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.Gap;
import rainward.input.load.LoadSheet;
import rainward.input.seed.SeedLot;
import rainward.input.stock.Demands;
import rainward.input.stock.Stock;
import rainward.input.stock.StockEntry;
import rainward.queue.problem.Plan;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;

/** What is in the shed, what work took from it, and when it runs out under the plan. */
public final class StockDesk {

    private final Office office;
    private final SupplyDesk supplies;

    public StockDesk(Office office) {
        this.office = office;
        this.supplies = new SupplyDesk(office);
    }

    /**
     * One item.
     *
     * @param item its name
     * @param onHand in the unit of the farm
     * @param used by logged work since the last count, in the same unit
     * @param planned what the days ahead take, in the same unit
     * @param unit of all of them
     * @param wholeBags of seed; zero for what comes loose
     * @param lacking to the end of the plan
     * @param runsOutOn first day that it is not enough for
     * @param orderBy last day to order
     * @param words for the person
     */
    public record Line(
            String item,
            double onHand,
            double used,
            double planned,
            String unit,
            int wholeBags,
            double lacking,
            Optional<LocalDate> runsOutOn,
            Optional<LocalDate> orderBy,
            String words) {}

    /** The shed under a plan. */
    public record Shed(LocalDate day, List<Line> items, List<Gap> gaps) {
        public Shed {
            items = List.copyOf(items);
            gaps = List.copyOf(gaps);
        }
    }

    /** The shed as it is, held against the days ahead. */
    public Shed shed(Plan plan) {
        LocalDate today = LocalDate.ofInstant(office.now(), office.zone());
        return office.store().read(books -> shed(books, plan, today));
    }

    private Shed shed(Books books, Plan plan, LocalDate today) {
        Stock stock = supplies.stock(books);
        SupplyDesk.Given given = supplies.given(books, today);
        List<Stock.Demand> demands = Demands.of(plan, given.supplies()).stream()
                .filter(demand -> !demand.day().isBefore(today))
                .toList();
        int deliveryDays = office.settings().inputs().shed().deliveryDays();
        Map<String, Stock.Shortage> shortages = new TreeMap<>();
        stock.shortages(demands, deliveryDays).forEach(s -> shortages.put(s.item(), s));
        Map<String, Double> planned = new TreeMap<>();
        stock.onHandKg().keySet().forEach(item -> planned.put(item, 0.0));
        demands.forEach(d -> planned.merge(d.item(), d.massKg(), Double::sum));
        Map<String, SeedLot> lots = given.supplies().seed();
        Map<String, Double> usedKg = usedSinceCount(supplies.book(books));
        List<Line> lines = planned.entrySet().stream()
                .map(e -> line(
                        new Row(
                                e.getKey(),
                                stock.of(e.getKey()),
                                usedKg.getOrDefault(e.getKey(), 0.0),
                                e.getValue()),
                        Optional.ofNullable(lots.get(e.getKey())),
                        Optional.ofNullable(shortages.get(e.getKey())),
                        today))
                .toList();
        LoadSheet sheet = supplies.sheet(books, plan, today, given);
        List<Gap> gaps = java.util.stream.Stream.concat(
                        stock.gaps().stream(), sheet.gaps().stream())
                .distinct()
                .toList();
        return new Shed(today, lines, gaps);
    }

    private record Row(String item, double onHandKg, double usedKg, double plannedKg) {}

    private Line line(
            Row row, Optional<SeedLot> lot, Optional<Stock.Shortage> shortage, LocalDate today) {
        UnitSystem units = office.settings().farm().units();
        return new Line(
                row.item(),
                shown(units, row.onHandKg()),
                shown(units, row.usedKg()),
                shown(units, row.plannedKg()),
                units.symbol(Quantity.MASS),
                lot.map(SeedLot::wholeBags).orElse(0),
                shortage.map(s -> shown(units, s.shortKg())).orElse(0.0),
                shortage.map(Stock.Shortage::runsOutOn),
                shortage.map(Stock.Shortage::orderBy),
                shortage.map(s -> s.text(units.mass(s.shortKg()), today, office.dayClock()))
                        .orElse(row.item() + " is enough for the days ahead"));
    }

    private static double shown(UnitSystem units, double massKg) {
        return Math.round(10 * units.shown(Quantity.MASS, massKg)) / 10.0;
    }

    private static Map<String, Double> usedSinceCount(List<StockEntry> book) {
        Map<String, Double> used = new TreeMap<>();
        book.stream().sorted(java.util.Comparator.comparing(StockEntry::at)).forEach(entry -> {
            switch (entry.kind()) {
                case USED -> used.merge(entry.item(), entry.massKg(), Double::sum);
                case COUNTED -> used.remove(entry.item());
                case RECEIVED -> {}
            }
        });
        return used;
    }

    /**
     * Writes down what somebody counted or what was delivered; told twice, it is written once.
     *
     * @return one sentence for the person
     */
    public String write(StockEntry.Kind kind, String item, String amount, JournalEntry.Said said) {
        return office.store().inTransaction(books -> write(books, kind, item, amount, said));
    }

    /** The same, in a transaction that holds more. */
    public String write(
            Books books, StockEntry.Kind kind, String item, String amount, JournalEntry.Said said) {
        Items items = new Items(office);
        String name = items.named(books, item);
        double massKg = items.massKg(name, amount);
        StockEntry entry = new StockEntry(name, said.at(), kind, massKg);
        String mass = office.settings().farm().units().mass(massKg);
        String verb = kind == StockEntry.Kind.COUNTED ? " counted" : " received";
        if (books.ledger().same(StockEntry.class, Optional.empty(), entry).isPresent()) {
            return name + ": " + mass + verb + " stands there already.";
        }
        books.ledger().add(entry, said);
        Instant now = office.now();
        String left =
                office.settings().farm().units().mass(supplies.stock(books).of(name));
        return name + ": " + mass + verb + (now.equals(said.at()) ? "" : " then") + "; " + left
                + " in the shed now.";
    }
}
