package rainward.input.fertilizer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import rainward.farm.Require;

/**
 * The cheapest blend that meets the targets, as a linear programme: rates of the products, and for
 * each nutrient what it falls short of or goes beyond its band. Short and beyond weigh far more
 * than money, short more than beyond, so targets that cannot be met are met as nearly as can be and
 * the misses are told.
 */
public final class Blender {
    private static final List<String> NAMES = List.of("N", "P2O5", "K2O");
    // A kilogram missed costs more than any kilogram bought, and half as much too many as too few.
    private static final double SHORT_WEIGHT = 2;
    private static final double BEYOND_WEIGHT = 1;
    // Below it a rate or a miss is rounding [kg/ha].
    private static final double NOTHING_KG_PER_HA = 1e-6;

    private final List<Product.Offer> offers;
    private final double areaHa;

    /**
     * A blend for an area out of products that can be had.
     *
     * @param areaHa that what is on hand has to be enough for [ha]
     */
    public Blender(List<Product.Offer> offers, double areaHa) {
        this.offers = List.copyOf(offers);
        this.areaHa = Require.positive("areaHa", areaHa);
    }

    /**
     * The band of each target that counts as met.
     *
     * @param shortFraction of the target that may be missing, 0 to 1
     * @param beyondFraction of the target that may be too much, 0 and more
     */
    public record Tolerance(double shortFraction, double beyondFraction) {
        public static final Tolerance EXACT = new Tolerance(0, 0);

        public Tolerance {
            Require.inRange("shortFraction", shortFraction, 0, 1);
            Require.notNegative("beyondFraction", beyondFraction);
        }
    }

    public Blend blend(Nutrients target, Tolerance tolerance) {
        if (offers.isEmpty()) {
            return new Blend(
                    List.of(), 0, Nutrients.NONE, misses(target, Nutrients.NONE, tolerance));
        }
        double[] point = new SimplexSolver()
                .optimize(
                        new LinearObjectiveFunction(prices(), 0),
                        new LinearConstraintSet(constraints(target.inOrder(), tolerance)),
                        GoalType.MINIMIZE,
                        new NonNegativeConstraint(true))
                .getPoint();
        List<Blend.Part> parts = IntStream.range(0, offers.size())
                .filter(i -> point[i] > NOTHING_KG_PER_HA)
                .mapToObj(i -> new Blend.Part(offers.get(i).product(), point[i]))
                .toList();
        double usdPerHa = IntStream.range(0, offers.size())
                .filter(i -> point[i] > NOTHING_KG_PER_HA)
                .mapToDouble(i -> point[i] * offers.get(i).usdPerKg())
                .sum();
        Nutrients brings = brought(parts);
        return new Blend(parts, usdPerHa, brings, misses(target, brings, tolerance));
    }

    /** Variables: a rate for each offer, then short and beyond for each nutrient. */
    private double[] prices() {
        int products = offers.size();
        double[] prices = new double[products + 2 * NAMES.size()];
        double dearest = 0;
        for (int i = 0; i < products; i++) {
            // Where prices are not known, the lightest blend is the cheapest.
            prices[i] = offers.get(i).usdPerKg() + 1e-6;
            dearest = Math.max(dearest, prices[i] / richest(offers.get(i).product()));
        }
        for (int nutrient = 0; nutrient < NAMES.size(); nutrient++) {
            prices[products + 2 * nutrient] = 10 * SHORT_WEIGHT * dearest;
            prices[products + 2 * nutrient + 1] = 10 * BEYOND_WEIGHT * dearest;
        }
        return prices;
    }

    private static double richest(Product product) {
        double[] shares = product.inOrder();
        return Math.max(shares[0], Math.max(shares[1], shares[2]));
    }

    private List<LinearConstraint> constraints(double[] target, Tolerance tolerance) {
        List<LinearConstraint> all = new ArrayList<>();
        for (int n = 0; n < NAMES.size(); n++) {
            double least = target[n] * (1 - tolerance.shortFraction());
            double most = target[n] * (1 + tolerance.beyondFraction());
            int slack = offers.size() + 2 * n;
            all.add(new LinearConstraint(row(n, slack, 1), Relationship.GEQ, least));
            all.add(new LinearConstraint(row(n, slack + 1, -1), Relationship.LEQ, most));
        }
        for (int i = 0; i < offers.size(); i++) {
            if (Double.isFinite(offers.get(i).onHandKg())) {
                double[] row = new double[offers.size() + 2 * NAMES.size()];
                row[i] = 1;
                all.add(new LinearConstraint(
                        row, Relationship.LEQ, offers.get(i).onHandKg() / areaHa));
            }
        }
        return all;
    }

    private double[] row(int nutrient, int slack, double sign) {
        double[] row = new double[offers.size() + 2 * NAMES.size()];
        for (int i = 0; i < offers.size(); i++) {
            row[i] = offers.get(i).product().inOrder()[nutrient];
        }
        row[slack] = sign;
        return row;
    }

    private static Nutrients brought(List<Blend.Part> parts) {
        double[] sum = new double[NAMES.size()];
        for (Blend.Part part : parts) {
            for (int n = 0; n < sum.length; n++) {
                sum[n] += part.rateKgPerHa() * part.product().inOrder()[n];
            }
        }
        return new Nutrients(sum[0], sum[1], sum[2]);
    }

    private static List<String> misses(Nutrients target, Nutrients brings, Tolerance tolerance) {
        List<String> misses = new ArrayList<>();
        for (int n = 0; n < NAMES.size(); n++) {
            double wanted = target.inOrder()[n];
            double got = brings.inOrder()[n];
            if (got < wanted * (1 - tolerance.shortFraction()) - NOTHING_KG_PER_HA) {
                misses.add(percent(n, wanted - got, wanted, "short of"));
            } else if (got > wanted * (1 + tolerance.beyondFraction()) + NOTHING_KG_PER_HA) {
                misses.add(percent(n, got - wanted, wanted, "beyond"));
            }
        }
        return misses;
    }

    private static String percent(int nutrient, double byKgPerHa, double wanted, String side) {
        return wanted > 0
                ? String.format(
                        Locale.ROOT,
                        "%s is %.0f%% %s its target",
                        NAMES.get(nutrient),
                        100 * byKgPerHa / wanted,
                        side)
                : NAMES.get(nutrient) + " comes along and is not wanted";
    }
}
