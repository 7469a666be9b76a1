package rainward.queue.bound;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rainward.queue.shop.Item;
import rainward.queue.shop.Shop;

/**
 * A value that no plan can exceed: a Lagrangian bound (Held and Karp 1971; Fisher 1981).
 *
 * <p>The order on machines is given up. What is kept: by every hour, the work that must be done by
 * then on each set of machines is no more than those machines are open for, and that work with the
 * seeder's way to each property no more than their shifts; and in every single hour seeders seed no
 * longer than they are open. Prices on these hours are set by subgradient steps; each price vector
 * gives a valid bound, and the least is returned. So the bound sees tillage and spreading, too.
 * Changes against a last order are not priced, and nothing may be under way.
 */
final class CapacityBound {

    private static final int STEPS = 1_000;

    /** Hours are small against sums of hours: their prices move by longer steps. */
    private static final double HOUR_SCALE = 400;

    private static final double SHRINK = 0.996;

    private final BoundedWork work;
    private final List<List<BoundedField>> byProperty;
    private final double drivingPrice;
    private final double[][] openPrice;
    private final double[][] shiftPrice;
    private final double[][] hourPrice;
    private final double[][] openUse;
    private final double[][] hourUse;
    private final double[][] shiftUse;

    private CapacityBound(Shop shop, int hours) {
        work = new BoundedWork(shop, hours);
        drivingPrice = shop.prices().drivingPerMinute();
        Map<Integer, List<BoundedField>> sites = new TreeMap<>();
        for (Item item : shop.items()) {
            BoundedField.of(item, work)
                    .ifPresent(f -> sites.computeIfAbsent(f.site(), s -> new ArrayList<>())
                            .add(f));
        }
        byProperty = List.copyOf(sites.values());
        openPrice = new double[work.classes()][work.hours()];
        shiftPrice = new double[work.classes()][work.hours()];
        hourPrice = new double[work.classes()][work.hours()];
        hourUse = new double[work.classes()][work.hours()];
        openUse = new double[work.classes()][work.hours()];
        shiftUse = new double[work.classes()][work.hours()];
    }

    /**
     * Reckons a bound.
     *
     * @param shop to be planned
     * @param hours that are planned
     * @param knownHa value of some plan for it, the total; sets the length of the steps only
     * @return no plan's total is above this [ha of full stand]
     */
    static double of(Shop shop, int hours, double knownHa) {
        CapacityBound bound = new CapacityBound(shop, hours);
        double best = Double.POSITIVE_INFINITY;
        double reach = 1.5;
        for (int step = 0; step < STEPS; step++) {
            double value = bound.relaxed();
            best = Math.min(best, value);
            bound.move(reach * Math.max(value - knownHa, 0.001 * Math.abs(knownHa) + 1e-6));
            reach *= SHRINK;
        }
        return best;
    }

    /** Value of the relaxed problem at the present prices; leaves what it uses behind. */
    private double relaxed() {
        double[][] open = BoundedWork.toEnd(openPrice);
        double[][] shift = BoundedWork.toEnd(shiftPrice);
        double sum = 0;
        for (int c = 0; c < work.classes(); c++) {
            for (int h = 0; h < work.hours(); h++) {
                openUse[c][h] = -work.open(c, h);
                shiftUse[c][h] = -work.shift(c, h);
                hourUse[c][h] = -work.inHour(c, h);
                sum -= openPrice[c][h] * openUse[c][h] + shiftPrice[c][h] * shiftUse[c][h];
                sum -= hourPrice[c][h] * hourUse[c][h];
            }
        }
        for (List<BoundedField> fields : byProperty) {
            sum += property(fields, open, shift);
        }
        return sum;
    }

    /** Best of one property: the seeder comes in some hour, and fields are seeded from then on. */
    private double property(List<BoundedField> fields, double[][] open, double[][] shift) {
        int hours = work.hours();
        double[] total = new double[hours + 1];
        List<double[]> gains = new ArrayList<>();
        for (BoundedField field : fields) {
            double[] gain = field.gains(open, shift, hourPrice);
            gains.add(gain);
            double best = 0;
            for (int h = hours - 1; h >= 0; h--) {
                best = Math.max(best, gain[h]);
                total[h] += best;
            }
        }
        int way = fields.get(0).wayIn();
        int seeder = fields.get(0).seederClass();
        int first = -1;
        double best = 0;
        for (int h = 0; h < hours; h++) {
            double value = total[h] - way * (shift[seeder][h] + drivingPrice);
            if (value > best) {
                best = value;
                first = h;
            }
        }
        if (first >= 0) {
            take(fields, gains, first);
            use(shiftUse, seeder, first, way);
        }
        return best;
    }

    private void take(List<BoundedField> fields, List<double[]> gains, int first) {
        for (int f = 0; f < fields.size(); f++) {
            int at = -1;
            double best = 0;
            for (int h = first; h < work.hours(); h++) {
                if (gains.get(f)[h] > best) {
                    best = gains.get(f)[h];
                    at = h;
                }
            }
            if (at >= 0) {
                int hour = at;
                BoundedField field = fields.get(f);
                SeedingEnds ends = field.ends();
                int end = ends.best(hour, hourPrice[field.seederClass()]);
                ends.take(ends.ends()[hour][end], hourUse[field.seederClass()]);
                field.needs().forEach(n -> {
                    use(openUse, n.machines(), n.dueHour(hour), n.workMinutes());
                    use(shiftUse, n.machines(), n.dueHour(hour), n.workMinutes());
                });
            }
        }
    }

    private static void use(double[][] use, int machines, int hour, double minutes) {
        for (int h = hour; h < use[machines].length; h++) {
            use[machines][h] += minutes;
        }
    }

    private void move(double reach) {
        double norm = 0;
        for (int c = 0; c < work.classes(); c++) {
            for (int h = 0; h < work.hours(); h++) {
                norm += openUse[c][h] * openUse[c][h] + shiftUse[c][h] * shiftUse[c][h];
                norm += HOUR_SCALE * hourUse[c][h] * hourUse[c][h];
            }
        }
        double step = norm > 0 ? reach / norm : 0;
        for (int c = 0; c < work.classes(); c++) {
            for (int h = 0; h < work.hours(); h++) {
                openPrice[c][h] = Math.max(0, openPrice[c][h] + step * openUse[c][h]);
                shiftPrice[c][h] = Math.max(0, shiftPrice[c][h] + step * shiftUse[c][h]);
                hourPrice[c][h] = Math.max(0, hourPrice[c][h] + step * HOUR_SCALE * hourUse[c][h]);
            }
        }
    }
}
