package rainward.daemon.yard.spread;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.daemon.office.Office;
import rainward.daemon.settings.InputSettings;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.input.SoilTest;
import rainward.input.fertilizer.CropRemoval;
import rainward.input.fertilizer.Product;
import rainward.input.fertilizer.Targets;
import rainward.input.lime.LimeQuality;
import rainward.input.record.Applied;
import rainward.input.record.Harvested;
import rainward.input.spread.FieldSpread;
import rainward.input.spread.SpreadCase;
import rainward.input.spread.SpreadRules;
import rainward.input.stock.Stock;
import rainward.intake.InputTables;
import rainward.intake.TableFolder;
import rainward.store.Books;
import rainward.store.ledger.LedgerLine;

/** Where soil tests and what was spread before become this year's lime and fertilizer. */
public final class SpreadDesk {

    private final Office office;
    private final InputTables tables = new InputTables(TableFolder.onClassPath());

    public SpreadDesk(Office office) {
        this.office = office;
    }

    /** Every field, in the order of the import, out of whatever can be bought. */
    public List<FieldSpread> all(Books books, LocalDate today) {
        InputSettings inputs = office.settings().inputs();
        SpreadRules rules =
                rules(inputs.products(), new Heap(inputs.limes(), Double.POSITIVE_INFINITY));
        return cases(books, today).stream()
                .map(one -> FieldSpread.of(one, rules))
                .toList();
    }

    /**
     * Every field, out of what is in the shed and no more: what one field takes, the next does not
     * find.
     *
     * @param order fields that are spread before all others, the first one first
     */
    public List<FieldSpread> fromShed(
            Books books, LocalDate today, Stock stock, List<String> order) {
        Map<String, Double> leftKg = new HashMap<>(stock.onHandKg());
        Map<String, FieldSpread> shared = new HashMap<>();
        List<SpreadCase> cases = cases(books, today);
        cases.stream()
                .sorted(Comparator.comparingInt(one -> place(order, one.plot().field())))
                .forEach(one -> {
                    double areaHa = one.plot().areaHa();
                    FieldSpread spread =
                            FieldSpread.of(one, rules(offers(leftKg), heap(leftKg, areaHa)));
                    spread.lime()
                            .ifPresent(dose -> leftKg.merge(
                                    dose.lime().name(), -dose.nowKgPerHa() * areaHa, Double::sum));
                    spread.blend()
                            .parts()
                            .forEach(part -> leftKg.merge(
                                    part.product().name(),
                                    -part.rateKgPerHa() * areaHa,
                                    Double::sum));
                    shared.put(one.plot().field(), spread);
                });
        return cases.stream()
                .flatMap(one -> Optional.ofNullable(shared.get(one.plot().field())).stream())
                .toList();
    }

    private static int place(List<String> order, String field) {
        int place = order.indexOf(field);
        return place < 0 ? order.size() : place;
    }

    private List<Product.Offer> offers(Map<String, Double> leftKg) {
        return office.settings().inputs().products().stream()
                .map(offer -> new Product.Offer(
                        offer.product(),
                        offer.usdPerKg(),
                        Math.max(0, leftKg.getOrDefault(offer.product().name(), 0.0))))
                .toList();
    }

    /**
     * Limes for a field and how much of the first of them there is.
     *
     * @param limes the first is spread
     * @param atHandKg of the first [kg]
     */
    private record Heap(List<LimeQuality> limes, double atHandKg) {}

    /** The first lime of the settings of which a kilogram a hectare is left; else none of any. */
    private Heap heap(Map<String, Double> leftKg, double areaHa) {
        List<LimeQuality> limes = office.settings().inputs().limes();
        Optional<LimeQuality> there = limes.stream()
                .filter(lime -> leftKg.getOrDefault(lime.name(), 0.0) >= areaHa)
                .findFirst();
        return there.map(first -> new Heap(
                        Stream.concat(
                                        Stream.of(first),
                                        limes.stream().filter(lime -> !lime.equals(first)))
                                .toList(),
                        leftKg.getOrDefault(first.name(), 0.0)))
                .orElse(new Heap(limes, 0));
    }

    /** What is asked of every field, in the order of the import. */
    private List<SpreadCase> cases(Books books, LocalDate today) {
        Map<String, SoilTest> tests = newest(books);
        Map<String, List<SpreadCase.Spreading>> spread = spread(books);
        Map<String, List<CropRemoval.Harvest>> harvests = harvests(books);
        return books.cases().stream()
                .map(item -> {
                    String field = item.field().name();
                    return new SpreadCase(
                            plot(item),
                            Optional.ofNullable(tests.get(field)),
                            new SpreadCase.Past(
                                    spread.getOrDefault(field, List.of()),
                                    harvests.getOrDefault(field, List.of())),
                            today);
                })
                .toList();
    }

    private SpreadCase.Plot plot(FieldCase item) {
        Field field = item.field();
        return new SpreadCase.Plot(
                field.name(),
                field.areaHa(),
                office.settings().inputs().advice().lime().targetPh(item.mix()));
    }

    private SpreadRules rules(List<Product.Offer> offers, Heap heap) {
        InputSettings inputs = office.settings().inputs();
        InputSettings.LimeAdvice lime = inputs.advice().lime();
        InputSettings.FeedAdvice feed = inputs.advice().feed();
        String key = feed.region() + "/" + feed.crops() + "/";
        return new SpreadRules(
                new SpreadRules.Liming(
                        known(tables.limeRules(), lime.region()),
                        known(tables.finenessSystems(), lime.fineness()),
                        heap.limes(),
                        heap.atHandKg(),
                        lime.cap(),
                        lime.depthCm()),
                new SpreadRules.Feeding(
                        new Targets.Rules(
                                known(tables.testRules(), key + "phosphate"),
                                known(tables.testRules(), key + "potash"),
                                feed.nitrogenKgPerHa()),
                        offers,
                        feed.tolerance()),
                inputs.advice().soilTestYears());
    }

    /** The settings have been held against the tables, so the name is there. */
    private static <T> T known(Map<String, T> all, String name) {
        return Optional.ofNullable(all.get(name)).orElseThrow();
    }

    /** The newest soil test of each field, by the name it goes by now. */
    public Map<String, SoilTest> newest(Books books) {
        Map<String, SoilTest> tests = new HashMap<>();
        for (LedgerLine<SoilTest> line : books.ledger().all(SoilTest.class)) {
            String field = line.field().orElseThrow();
            SoilTest said = line.entry();
            SoilTest test = new SoilTest(field, said.sampledOn(), said.acidity(), said.nutrients());
            tests.merge(field, test, (a, b) -> b.sampledOn().isBefore(a.sampledOn()) ? a : b);
        }
        return tests;
    }

    /** What was spread; a rate is over the whole field, also where a part of it was worked. */
    private Map<String, List<SpreadCase.Spreading>> spread(Books books) {
        Map<String, Double> areas = new HashMap<>();
        books.fields().all().forEach(field -> areas.put(field.name(), field.areaHa()));
        Map<String, List<SpreadCase.Spreading>> all = new HashMap<>();
        for (LedgerLine<Applied> line : books.ledger().all(Applied.class)) {
            String field = line.field().orElseThrow();
            line.entry()
                    .used()
                    .forEach(used -> all.computeIfAbsent(field, f -> new ArrayList<>())
                            .add(new SpreadCase.Spreading(
                                    day(line.said().at()),
                                    used.item(),
                                    used.massKg()
                                            / areas.getOrDefault(
                                                    field, line.entry().areaHa()))));
        }
        return all;
    }

    private Map<String, List<CropRemoval.Harvest>> harvests(Books books) {
        Map<String, CropRemoval> removals = tables.cropRemovals();
        Map<String, List<CropRemoval.Harvest>> all = new HashMap<>();
        for (LedgerLine<Harvested> line : books.ledger().all(Harvested.class)) {
            Optional.ofNullable(removals.get(line.entry().crop()))
                    .ifPresent(removal -> all.computeIfAbsent(
                                    line.field().orElseThrow(), f -> new ArrayList<>())
                            .add(new CropRemoval.Harvest(
                                    removal, line.entry().on(), line.entry().yieldKgPerHa())));
        }
        return all;
    }

    private LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, office.zone());
    }
}
