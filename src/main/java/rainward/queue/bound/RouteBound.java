package rainward.queue.bound;

import java.util.List;
import java.util.stream.IntStream;
import rainward.queue.shop.Shop;

/**
 * A Lagrangian bound (Fisher 1981) that keeps the whole way of every machine: where it stands in
 * each minute, its drives, and the hours in which each field may be worked.
 *
 * <p>Given up is only what ties machines together: that a stage is done once, and that the stage
 * after it begins when it is done. Both have prices; at any prices the sum of the best ways is a
 * bound. Prices are found on a coarse grid of minutes, which bounds nothing, and mended on the
 * minutes themselves, which does.
 */
final class RouteBound {

    private static final int COARSE_MINUTES = 10;

    /**
     * Steps on the minutes for each step on the grid; a step there costs ten times as much; chosen
     * by experiment.
     */
    private static final double FINE_SHARE = 0.05;

    /** After this share of the steps without gain, steps get shorter. */
    private static final double PATIENCE = 0.015;

    private static final double SHORTER = 0.7;
    private static final double LEAST_GAIN = 1e-4;

    private final Shop shop;
    private final int hours;
    private final List<BoundedStage> stages;
    private final StagePrices prices;
    private final double knownHa;
    private double reach = 1;

    private RouteBound(Shop shop, int hours, double knownHa) {
        this.shop = shop;
        this.hours = hours;
        this.knownHa = knownHa;
        stages = BoundedStage.of(shop.items());
        prices = new StagePrices(stages, hours);
    }

    /**
     * Reckons a bound.
     *
     * @param shop to be planned
     * @param hours that are planned
     * @param knownHa value of some plan; sets the length of steps only
     * @param steps on the coarse grid
     */
    static double of(Shop shop, int hours, double knownHa, int steps) {
        RouteBound bound = new RouteBound(shop, hours, knownHa);
        bound.descend(COARSE_MINUTES, steps);
        bound.reach = Math.max(bound.reach, 0.1);
        return bound.descend(1, (int) Math.ceil(FINE_SHARE * steps));
    }

    private double descend(int gridMinutes, int steps) {
        List<MachineRoute> routes = IntStream.range(0, shop.machines())
                .mapToObj(m -> MachineRoute.of(m, shop, stages, new Grid(hours, gridMinutes)))
                .toList();
        double best = Double.POSITIVE_INFINITY;
        int idle = 0;
        for (int step = 0; step < steps; step++) {
            double value = value(routes);
            idle = value < best * (1 - LEAST_GAIN) ? 0 : idle + 1;
            best = Math.min(best, value);
            if (idle > PATIENCE * steps) {
                reach *= SHORTER;
                idle = 0;
            }
            double above = Math.max(value - knownHa, 0.001 * Math.abs(knownHa) + 1e-6);
            prices.move(reach * above);
        }
        return best;
    }

    /** Value of the relaxed problem at the present prices; leaves behind what it uses. */
    private double value(List<MachineRoute> routes) {
        prices.clearUse();
        double value = prices.allowed();
        for (MachineRoute route : routes) {
            value += route.solve(prices);
            route.walk(prices);
        }
        return value;
    }

    /**
     * How time is cut.
     *
     * @param hours planned
     * @param minutes between the starts that are looked at; 1: all of them
     */
    record Grid(int hours, int minutes) {}
}
