package rainward.input.spread;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.input.Gap;
import rainward.input.fertilizer.Blend;
import rainward.input.fertilizer.Blender;
import rainward.input.fertilizer.CropRemoval;
import rainward.input.fertilizer.Nutrients;
import rainward.input.fertilizer.Product;
import rainward.input.fertilizer.Targets;
import rainward.input.load.Supplies;

/**
 * What goes on one field this year.
 *
 * @param asked for
 * @param lime dose, if it needs any and the test tells how much
 * @param target of fertilizer, less what was spread already
 * @param blend that meets it
 * @param gaps what is not known
 */
public record FieldSpread(
        SpreadCase asked, Optional<LimeDose> lime, Nutrients target, Blend blend, List<Gap> gaps) {

    public FieldSpread {
        gaps = List.copyOf(gaps);
    }

    /** Works a field out. */
    public static FieldSpread of(SpreadCase asked, SpreadRules rules) {
        List<Gap> gaps = new ArrayList<>();
        asked.test()
                .flatMap(test -> test.ageGap(asked.today(), rules.soilTestYears()))
                .ifPresent(gaps::add);
        Optional<LimeDose> lime = LimeDose.of(asked, rules.lime(), gaps);
        Targets targets = targets(asked, rules.feed());
        gaps.addAll(targets.gaps());
        Nutrients left = less(targets.wanted(), brought(asked, rules.feed()));
        Blend blend = new Blender(rules.feed().offers(), asked.plot().areaHa())
                .blend(left, rules.feed().tolerance());
        blend.misses()
                .forEach(miss -> gaps.add(new Gap(
                        asked.plot().field(),
                        miss,
                        "add a product that carries it to the settings")));
        return new FieldSpread(asked, lime, left, blend, gaps);
    }

    /** Everything to be spread, product by product, for the load sheet. */
    public List<Supplies.Spread> spreads() {
        return Stream.concat(
                        lime.stream()
                                .filter(dose -> dose.nowKgPerHa() > 0)
                                .map(dose -> new Supplies.Spread(
                                        dose.lime().name(), dose.nowKgPerHa(), false)),
                        blend.parts().stream()
                                .map(part -> new Supplies.Spread(
                                        part.product().name(), part.rateKgPerHa(), true)))
                .toList();
    }

    /**
     * By the soil test, beside which harvests since then are replaced; without one, what harvests
     * took is all that is known of phosphate and potash.
     */
    private static Targets targets(SpreadCase asked, SpreadRules.Feeding feed) {
        List<CropRemoval.Harvest> harvests = asked.past().harvests();
        if (asked.test().isPresent()) {
            Nutrients removed = CropRemoval.since(asked.test().get().sampledOn(), harvests);
            return Targets.of(asked.test().get(), feed.rules(), removed);
        }
        Nutrients removed = harvests.stream()
                .map(harvest -> harvest.removal().of(harvest.yieldKgPerHa()))
                .reduce(Nutrients.NONE, Nutrients::plus);
        Targets known = Targets.replacing(removed, feed.rules().nitrogenKgPerHa());
        return new Targets(
                known.wanted(),
                List.of(new Gap(
                        asked.plot().field(),
                        harvests.isEmpty()
                                ? "no soil test: lime, phosphate and potash are not known"
                                : "no soil test: lime is not known, phosphate and potash replace"
                                        + " what harvests took",
                        "pull cores and ask the laboratory for pH, buffer pH, P and K")));
    }

    /** Brought since the test; of nitrogen only what was brought this year is still there. */
    private static Nutrients brought(SpreadCase asked, SpreadRules.Feeding feed) {
        Nutrients sum = Nutrients.NONE;
        for (SpreadCase.Spreading spread : asked.sinceTest()) {
            boolean thisYear = spread.on().getYear() == asked.today().getYear();
            Optional<Product> product = feed.offers().stream()
                    .map(Product.Offer::product)
                    .filter(p -> p.name().equals(spread.product()))
                    .findFirst();
            if (product.isPresent()) {
                Product p = product.get();
                double rate = spread.rateKgPerHa();
                sum = sum.plus(new Nutrients(
                        thisYear ? rate * p.nitrogenFraction() : 0,
                        rate * p.phosphateFraction(),
                        rate * p.potashFraction()));
            }
        }
        return sum;
    }

    private static Nutrients less(Nutrients wanted, Nutrients brought) {
        return new Nutrients(
                Math.max(0, wanted.nitrogenKgPerHa() - brought.nitrogenKgPerHa()),
                Math.max(0, wanted.phosphateKgPerHa() - brought.phosphateKgPerHa()),
                Math.max(0, wanted.potashKgPerHa() - brought.potashKgPerHa()));
    }
}
