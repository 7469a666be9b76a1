package rainward.daemon.settings;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.NearestName;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.fertilizer.Blender;
import rainward.input.fertilizer.Product;
import rainward.input.lime.LimePlan;
import rainward.input.lime.LimeQuality;
import rainward.input.load.Supplies;
import rainward.input.seed.SeedBoxes;
import rainward.intake.InputTables;

/**
 * Seed boxes, spreaders, products, limes, and whose advice holds.
 *
 * @param tables published recommendations and usual grades
 * @param species names that seed may have
 */
record InputReader(InputTables tables, Set<String> species) {

    private static final Pattern GRADE =
            Pattern.compile("(\\d{1,2}(?:\\.\\d+)?)-(\\d{1,2}(?:\\.\\d+)?)-(\\d{1,2}(?:\\.\\d+)?)");
    private static final double KG_OF_A_50_LB_BAG = 22.679_618_5;
    private static final double MOST_USD_PER_KG = 100;

    /** For a forage brassica, the low end of what is advised; {@code shared/nitrogen.csv}. */
    private static final double LOW_NITROGEN_LB_PER_AC = 50;

    InputSettings inputs(Section root, List<Machine> machines, List<String> mixes) {
        return new InputSettings(
                new InputSettings.Gear(boxes(root, machines), spreaders(root, machines)),
                shed(root),
                products(root),
                limes(root),
                advice(root.table("advice"), mixes));
    }

    private static void known(Section section, String key, String name, List<String> names) {
        if (!name.equals(Section.NAMELESS) && !names.contains(name)) {
            section.wrong(
                    key,
                    NearestName.of(name, names)
                            .map(near -> "is not known, the nearest is \"" + near + "\"")
                            .orElse("is not known, must be one of " + String.join(", ", names)));
        }
    }

    private static String machine(Section section, List<Machine> machines) {
        String name = section.name("machine");
        known(
                section,
                "machine",
                name,
                machines.stream().map(Machine::name).sorted().toList());
        return name;
    }

    private static Map<String, SeedBoxes> boxes(Section root, List<Machine> machines) {
        Map<String, SeedBoxes> all = new HashMap<>();
        for (Section section : root.tables("seeder")) {
            String name = machine(section, machines);
            double heel = section.share("heel", Bounds.Real.usually(0.08, 0, 0.5));
            List<SeedBoxes.Box> boxes =
                    section.tables("box").stream().map(InputReader::box).toList();
            section.end();
            if (boxes.isEmpty()) {
                section.wrong(
                        "box",
                        "must tell of each seed box: [{ width = \"6 ft\","
                                + " holds = \"3 bu\" }]");
            } else {
                all.put(name, new SeedBoxes(boxes, heel));
            }
        }
        return all;
    }

    private static SeedBoxes.Box box(Section section) {
        SeedBoxes.Box box = new SeedBoxes.Box(
                section.amount("width", Bounds.Amount.given(Quantity.WIDTH, 0.1, 30)),
                section.amount("holds", Bounds.Amount.given(Quantity.VOLUME, 1, 5_000)));
        section.end();
        return box;
    }

    private static Map<String, Supplies.Spreader> spreaders(Section root, List<Machine> machines) {
        Map<String, Supplies.Spreader> all = new HashMap<>();
        for (Section section : root.tables("spreader")) {
            String name = machine(section, machines);
            double loadKg = section.amount("load", Bounds.Amount.given(Quantity.MASS, 50, 30_000));
            Optional<GeoPoint> loadsAt = section.has("loads_at")
                    ? Optional.of(WorkReader.place(section.table("loads_at")))
                    : Optional.empty();
            all.put(name, new Supplies.Spreader(loadKg, loadsAt));
            section.end();
        }
        return all;
    }

    private InputSettings.Shed shed(Section root) {
        Section section = root.table("shed");
        Bounds.Amount bag = Bounds.Amount.usually(Quantity.MASS, KG_OF_A_50_LB_BAG, 1, 2_000);
        double usualBagKg = section.amount("bag", bag);
        Duration delivery = section.span(
                "delivery",
                Bounds.Span.usually(Duration.ofDays(5), Duration.ZERO, Duration.ofDays(120)));
        section.end();
        Map<String, Double> bags = new HashMap<>();
        for (Section seed : root.tables("seed")) {
            String name = seed.name("species");
            known(seed, "species", name, species.stream().sorted().toList());
            bags.put(name, seed.amount("bag", bag));
            seed.end();
        }
        return new InputSettings.Shed(usualBagKg, bags, delivery);
    }

    /** A price is for the weight that the farm's people speak of: a pound or a kilogram. */
    private static double usdPerKg(Section section) {
        double perUnit =
                section.number("price", new Bounds.Real(Optional.empty(), 0, MOST_USD_PER_KG));
        return perUnit / section.reading().units().inside(Quantity.MASS, 1);
    }

    private List<Product.Offer> products(Section root) {
        Map<String, Product> usual = tables.products();
        List<Section> sections = root.tables("product");
        List<Product.Offer> offers = new ArrayList<>();
        for (Section section : sections) {
            String name = section.name("name");
            Optional<Product> product = section.has("grade")
                    ? grade(section, name)
                    : Optional.ofNullable(usual.get(name));
            if (product.isEmpty() && !section.has("grade")) {
                section.wrong(
                        "grade",
                        "\"" + name + "\" is no product of the shared table: give the numbers of"
                                + " its label, for instance \"18-46-0\"");
            }
            double price = usdPerKg(section);
            section.end();
            product.ifPresent(
                    p -> offers.add(new Product.Offer(p, price, Double.POSITIVE_INFINITY)));
        }
        WorkReader.once(
                sections, offers.stream().map(offer -> offer.product().name()).toList());
        return offers;
    }

    private static Optional<Product> grade(Section section, String name) {
        String remedy = "must be the three numbers of its label, N-P2O5-K2O, together 1 to 100:"
                + " \"18-46-0\"";
        String text = section.text("grade", remedy);
        Matcher form = GRADE.matcher(text);
        if (form.matches()) {
            double n = Double.parseDouble(form.group(1));
            double p = Double.parseDouble(form.group(2));
            double k = Double.parseDouble(form.group(3));
            if (n + p + k >= 1 && n + p + k <= 100) {
                return Optional.of(Product.ofGrade(name, n, p, k));
            }
        }
        section.wrong("grade", remedy);
        return Optional.empty();
    }

    private static List<LimeQuality> limes(Section root) {
        List<Section> sections = root.tables("lime");
        List<LimeQuality> limes = sections.stream().map(InputReader::lime).toList();
        WorkReader.once(sections, limes.stream().map(LimeQuality::name).toList());
        return limes;
    }

    private static LimeQuality lime(Section section) {
        Map<Integer, Double> passing = new HashMap<>();
        for (Section sieve : section.tables("passes")) {
            passing.put(
                    (int) sieve.whole("mesh", new Bounds.Whole(0, 4, 400)),
                    sieve.share("share", new Bounds.Real(Optional.empty(), 0, 1)));
            sieve.end();
        }
        LimeQuality lime = new LimeQuality(
                section.name("name"),
                section.share("cce", new Bounds.Real(Optional.empty(), 0.1, 1.8)),
                section.share("moisture", Bounds.Real.usually(0, 0, 0.5)),
                passing,
                usdPerKg(section));
        section.end();
        return lime;
    }

    private InputSettings.Advice advice(Section section, List<String> mixes) {
        Set<String> testRules = tables.testRules().keySet();
        InputSettings.Advice advice =
                new InputSettings.Advice(lime(section, mixes), feed(section, testRules), (int)
                        section.whole("soil_test_years", new Bounds.Whole(3, 1, 10)));
        section.end();
        return advice;
    }

    private InputSettings.LimeAdvice lime(Section section, List<String> mixes) {
        Map<String, Double> mixPh = new HashMap<>();
        for (Section own : section.tables("mix_ph")) {
            String mix = own.name("mix");
            known(own, "mix", mix, mixes);
            mixPh.put(mix, own.number("ph", new Bounds.Real(Optional.empty(), 5, 7.5)));
            own.end();
        }
        return new InputSettings.LimeAdvice(
                name(section, "lime", "tri-state 1995", tables.limeRules().keySet()),
                name(section, "fineness", "new york", tables.finenessSystems().keySet()),
                section.number("target_ph", Bounds.Real.usually(6.5, 5, 7.5)),
                mixPh,
                new LimePlan.Cap(
                        section.amount(
                                "lime_most",
                                Bounds.Amount.usually(
                                        Quantity.RATE,
                                        LimePlan.Cap.USUAL.mostKgPerHa(),
                                        50,
                                        50_000)),
                        (int) section.whole("lime_every_years", new Bounds.Whole(1, 1, 10))),
                section.amount(
                        "lime_depth",
                        Bounds.Amount.usually(
                                Quantity.DEPTH,
                                UnitSystem.US_CUSTOMARY.inside(Quantity.DEPTH, 6),
                                2,
                                40)));
    }

    private InputSettings.FeedAdvice feed(Section section, Set<String> testRules) {
        Set<String> regions =
                testRules.stream().map(key -> key.split("/")[0]).collect(Collectors.toSet());
        String region = name(section, "fertilizer", "tri-state 1995", regions);
        Set<String> crops = testRules.stream()
                .filter(key -> key.startsWith(region + "/"))
                .map(key -> key.split("/")[1])
                .collect(Collectors.toSet());
        return new InputSettings.FeedAdvice(
                region,
                name(section, "crops", "wheat and legumes", crops),
                section.amount(
                        "nitrogen",
                        Bounds.Amount.usually(
                                Quantity.RATE,
                                UnitSystem.US_CUSTOMARY.inside(
                                        Quantity.RATE, LOW_NITROGEN_LB_PER_AC),
                                0,
                                400)),
                new Blender.Tolerance(
                        section.share("may_miss", Bounds.Real.usually(0.1, 0, 0.5)),
                        section.share("may_exceed", Bounds.Real.usually(0.25, 0, 1))));
    }

    private static String name(Section section, String key, String usual, Set<String> names) {
        if (!section.has(key)) {
            return usual;
        }
        String name = section.name(key);
        List<String> sorted = names.stream().sorted().toList();
        known(section, key, name, sorted);
        return names.contains(name) ? name : usual;
    }
}
