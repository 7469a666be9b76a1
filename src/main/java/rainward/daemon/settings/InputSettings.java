package rainward.daemon.settings;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import rainward.input.fertilizer.Blender;
import rainward.input.fertilizer.Product;
import rainward.input.lime.LimePlan;
import rainward.input.lime.LimeQuality;
import rainward.input.load.Supplies;
import rainward.input.seed.SeedBoxes;

/**
 * What goes on and into the ground, out of what, by whose advice.
 *
 * @param gear how machines carry seed and lime
 * @param shed how seed comes, and how long an order takes
 * @param products fertilizers that can be had, with price
 * @param limes that can be had, with price; the first is the one spread
 * @param advice whose recommendations hold
 */
public record InputSettings(
        Gear gear,
        Shed shed,
        List<Product.Offer> products,
        List<LimeQuality> limes,
        Advice advice) {

    public InputSettings {
        products = List.copyOf(products);
        limes = List.copyOf(limes);
    }

    /**
     * How machines carry.
     *
     * @param boxes seed boxes, by seeder
     * @param spreaders how spreaders carry, by machine
     */
    public record Gear(Map<String, SeedBoxes> boxes, Map<String, Supplies.Spreader> spreaders) {
        public Gear {
            boxes = Map.copyOf(boxes);
            spreaders = Map.copyOf(spreaders);
        }
    }

    /**
     * How seed comes.
     *
     * @param usualBagKg weight of a bag where nothing else is said [kg]
     * @param bagKg weight of a bag, by species [kg]
     * @param delivery from an order until it is in the shed
     */
    public record Shed(double usualBagKg, Map<String, Double> bagKg, Duration delivery) {
        public Shed {
            bagKg = Map.copyOf(bagKg);
        }

        /** Days to wait for a delivery; a day begun is a day waited. */
        public int deliveryDays() {
            return (int) Math.ceil(delivery.toHours() / 24.0);
        }

        public double bagKg(String species) {
            return bagKg.getOrDefault(species, usualBagKg);
        }
    }

    /**
     * Whose recommendations hold.
     *
     * @param lime for lime
     * @param feed for fertilizer
     * @param soilTestYears a test older than this is said to be old
     */
    public record Advice(LimeAdvice lime, FeedAdvice feed, int soilTestYears) {}

    /**
     * For lime.
     *
     * @param region whose published recommendation
     * @param fineness whose sieve factors
     * @param targetPh to lime to, where a mix has none of its own
     * @param mixPh target by mix
     * @param cap the most at a time, and how often
     * @param depthCm that it is worked in [cm]
     */
    public record LimeAdvice(
            String region,
            String fineness,
            double targetPh,
            Map<String, Double> mixPh,
            LimePlan.Cap cap,
            double depthCm) {
        public LimeAdvice {
            mixPh = Map.copyOf(mixPh);
        }

        public double targetPh(String mix) {
            return mixPh.getOrDefault(mix, targetPh);
        }
    }

    /**
     * For fertilizer.
     *
     * @param region whose published recommendation
     * @param crops kind of crop that it is taken for
     * @param nitrogenKgPerHa given to the crop [kg/ha]
     * @param tolerance how near to the target is near enough
     */
    public record FeedAdvice(
            String region, String crops, double nitrogenKgPerHa, Blender.Tolerance tolerance) {}
}
