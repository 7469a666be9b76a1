package rainward.input.fertilizer;

import java.util.List;
import java.util.stream.IntStream;
import rainward.farm.Require;

/**
 * Products that are spread together.
 *
 * @param parts rate of each; none of zero
 * @param usdPerHa what it costs [USD/ha]
 * @param brings what it feeds
 * @param misses in words, nutrient by nutrient; empty where the targets are met
 */
public record Blend(List<Part> parts, double usdPerHa, Nutrients brings, List<String> misses) {

    public Blend {
        parts = List.copyOf(parts);
        misses = List.copyOf(misses);
    }

    /** All products together [kg/ha]. */
    public double rateKgPerHa() {
        return parts.stream().mapToDouble(Part::rateKgPerHa).sum();
    }

    /** Product by product, what a field takes [kg]. */
    public List<Amount> amounts(double areaHa) {
        Require.positive("areaHa", areaHa);
        return parts.stream()
                .map(part -> new Amount(part.product().name(), part.rateKgPerHa() * areaHa))
                .toList();
    }

    /**
     * Even loads of a spreader for a field.
     *
     * @param spreaderKg most that it carries [kg]
     * @return from first to last, all alike; empty where nothing is spread
     */
    public List<Load> loads(double areaHa, double spreaderKg) {
        Require.positive("areaHa", areaHa);
        Require.positive("spreaderKg", spreaderKg);
        int count = (int) Math.ceil(rateKgPerHa() * areaHa / spreaderKg - 1e-9);
        return IntStream.range(0, count)
                .mapToObj(i -> new Load(areaHa / count, amounts(areaHa / count)))
                .toList();
    }

    /**
     * One product.
     *
     * @param product by its grade
     * @param rateKgPerHa on the field [kg/ha]
     */
    public record Part(Product product, double rateKgPerHa) {}

    /**
     * A weight of a product.
     *
     * @param product its name
     * @param massKg of it [kg]
     */
    public record Amount(String product, double massKg) {}

    /**
     * One load of the spreader.
     *
     * @param areaHa that it covers [ha]
     * @param amounts product by product
     */
    public record Load(double areaHa, List<Amount> amounts) {

        public Load {
            amounts = List.copyOf(amounts);
        }

        public double massKg() {
            return amounts.stream().mapToDouble(Amount::massKg).sum();
        }
    }
}
