package rainward.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.fertilizer.CropRemoval;
import rainward.input.fertilizer.NitrogenRange;
import rainward.input.fertilizer.Product;
import rainward.input.fertilizer.TestRule;
import rainward.input.lime.BufferIndexRule;
import rainward.input.lime.ExchangeAcidityRule;
import rainward.input.lime.FinenessSystem;
import rainward.input.lime.LimeNeed;
import rainward.input.lime.LimeRule;
import rainward.input.seed.BulkDensity;

/** What seed, lime and fertilizer are reckoned with, from the shared tables. */
public final class InputTables {
    private final TableFolder folder;

    public InputTables(TableFolder folder) {
        this.folder = folder;
    }

    /** Fertilizers by name, in the order of the table. */
    public Map<String, Product> products() {
        return byName(
                "products.csv",
                List.of("product", "nitrogen_pct", "phosphate_pct", "potash_pct", "source"),
                row -> Product.ofGrade(
                        row.text("product"),
                        row.number("nitrogen_pct"),
                        row.number("phosphate_pct"),
                        row.number("potash_pct")));
    }

    /** What harvests carry off, by crop. */
    public Map<String, CropRemoval> cropRemovals() {
        return byName(
                "crop-removal.csv",
                List.of("crop", "bushel_lb", "phosphate_lb_per_bu", "potash_lb_per_bu", "source"),
                row -> new CropRemoval(
                        row.text("crop"),
                        row.number("phosphate_lb_per_bu") / row.number("bushel_lb"),
                        row.number("potash_lb_per_bu") / row.number("bushel_lb")));
    }

    /** Weight of seed by volume. */
    public BulkDensity bulkDensity() {
        return new BulkDensity(byName(
                "bulk-densities.csv",
                List.of("material", "kg_per_m3", "source"),
                row -> row.number("kg_per_m3")));
    }

    /** Nitrogen by kind of crop. */
    public Map<String, NitrogenRange> nitrogen() {
        return byName(
                "nitrogen.csv",
                List.of("crops", "low_lb_per_acre", "high_lb_per_acre", "source"),
                row -> new NitrogenRange(
                        kgPerHa(row.number("low_lb_per_acre")),
                        kgPerHa(row.number("high_lb_per_acre"))));
    }

    /** Sieve systems of lime, by name. */
    public Map<String, FinenessSystem> finenessSystems() {
        Map<String, FinenessSystem> systems = new LinkedHashMap<>();
        grouped("lime-fineness.csv", "system", List.of("system", "mesh", "weight", "source"))
                .forEach((name, rows) -> systems.put(
                        name,
                        rows.get(0)
                                .build(() -> new FinenessSystem(
                                        name,
                                        rows.stream()
                                                .collect(Collectors.toMap(
                                                        row -> (int) row.number("mesh"),
                                                        row -> row.number("weight")))))));
        return systems;
    }

    /** Lime recommendations, by region. */
    public Map<String, LimeRule> limeRules() {
        Map<String, LimeRule> rules = new LinkedHashMap<>();
        grouped(
                        "lime-recommendations.csv",
                        "region",
                        List.of(
                                "region",
                                "rule",
                                "target_ph",
                                "intercept_tons_per_acre",
                                "slope_tons_per_acre",
                                "depth_in",
                                "effective_pct",
                                "source"))
                .forEach((region, rows) ->
                        rules.put(region, rows.get(0).build(() -> limeRule(region, rows))));
        return rules;
    }

    /** Fertilizer by soil test; keys are region, crops and nutrient, parted by slashes. */
    public Map<String, TestRule.ByExchange> testRules() {
        Map<String, TestRule.ByExchange> rules = new LinkedHashMap<>();
        List<String> columns = List.of(
                "region",
                "crops",
                "nutrient",
                "method",
                "critical_ppm",
                "critical_ppm_per_meq",
                "plateau_ppm",
                "drawdown_ppm",
                "build_up_lb",
                "build_up_lb_per_meq",
                "fixed_lb",
                "source");
        for (TableRow row : folder.rows("soil-test-rules.csv", columns)) {
            String key = row.text("region") + "/" + row.text("crops") + "/" + row.text("nutrient");
            unique(row, key, rules.put(key, row.build(() -> testRule(row))));
        }
        return rules;
    }

    private static LimeRule limeRule(String region, List<TableRow> rows) {
        TableRow first = rows.get(0);
        LimeNeed.Standard standard = new LimeNeed.Standard(
                first.number("effective_pct") / 100,
                UnitSystem.US_CUSTOMARY.inside(Quantity.DEPTH, first.number("depth_in")));
        return switch (first.text("rule")) {
            case "exchange acidity" -> new ExchangeAcidityRule(region, standard);
            case "buffer index" ->
                new BufferIndexRule(
                        region,
                        rows.stream()
                                .collect(Collectors.toMap(
                                        row -> row.number("target_ph"),
                                        row -> BufferIndexRule.Line.ofShortTons(
                                                row.number("intercept_tons_per_acre"),
                                                row.number("slope_tons_per_acre")))),
                        standard);
            default ->
                throw first.fault(
                        "rule",
                        "is '" + first.text("rule") + "'",
                        "must be exchange acidity or buffer index");
        };
    }

    private static TestRule.ByExchange testRule(TableRow row) {
        return new TestRule.ByExchange(
                new TestRule(
                        row.text("method"),
                        row.number("critical_ppm"),
                        row.number("plateau_ppm"),
                        row.number("drawdown_ppm"),
                        new TestRule.Feed(
                                kgPerHa(row.number("build_up_lb")),
                                kgPerHa(row.number("fixed_lb")))),
                row.number("critical_ppm_per_meq"),
                kgPerHa(row.number("build_up_lb_per_meq")));
    }

    private static double kgPerHa(double lbPerAcre) {
        return UnitSystem.US_CUSTOMARY.inside(Quantity.RATE, lbPerAcre);
    }

    private Map<String, List<TableRow>> grouped(String file, String column, List<String> columns) {
        Map<String, List<TableRow>> groups = new LinkedHashMap<>();
        for (TableRow row : folder.rows(file, columns)) {
            groups.computeIfAbsent(row.text(column), name -> new ArrayList<>()).add(row);
        }
        return groups;
    }

    private <T> Map<String, T> byName(String file, List<String> columns, RowReader<T> reader) {
        Map<String, T> all = new LinkedHashMap<>();
        for (TableRow row : folder.rows(file, columns)) {
            String name = row.text(columns.get(0));
            unique(row, name, all.put(name, row.build(() -> reader.read(row))));
        }
        return all;
    }

    private static void unique(TableRow row, String name, @Nullable Object before) {
        if (before != null) {
            throw new BadTableException(row.file() + " line " + row.line() + ": twice: " + name);
        }
    }

    /** Reads one row. */
    private interface RowReader<T> {
        T read(TableRow row);
    }
}
