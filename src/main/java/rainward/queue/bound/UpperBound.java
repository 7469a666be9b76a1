package rainward.queue.bound;

import java.util.HashSet;
import java.util.Set;
import rainward.queue.model.Screening;
import rainward.queue.model.ShopBuilder;
import rainward.queue.problem.PlanProblem;
import rainward.queue.shop.Shop;

/**
 * A value that no plan can exceed, whatever its order. It sees the ways of all machines as long as
 * these can be followed one by one, and their hours only where there are too many.
 */
public final class UpperBound {

    /** Above this many machines x places x places, ways are not followed any more. */
    private static final long GREATEST_NET = 20_000;

    private static final int STEPS = 2_500;

    private UpperBound() {}

    /**
     * Reckons a bound.
     *
     * @param problem to be planned
     * @param knownHa value of some plan for it, the total; sets the length of the steps only
     * @return no plan's total is above this [ha of full stand]
     */
    public static double of(PlanProblem problem, double knownHa) {
        return of(problem, knownHa, STEPS);
    }

    /** The same with a number of steps; each gives a valid bound, more a tighter one. */
    static double of(PlanProblem problem, double knownHa, int steps) {
        Screening.Screened screened = Screening.of(ShopBuilder.inOrder(problem, problem.jobs()));
        Shop shop = ShopBuilder.build(ShopBuilder.inOrder(problem, screened.fit()));
        long places = shop.ways().sites();
        boolean small = shop.machines() * places * places <= GREATEST_NET;
        double keptHa = keptHa(problem);
        double soughtHa = knownHa - keptHa;
        return keptHa
                + (small
                        ? RouteBound.of(shop, problem.hours(), soughtHa, steps)
                        : CapacityBound.of(shop, problem.hours(), soughtHa));
    }

    /**
     * What all fields would earn if they were ready and their seed was kept; what seeding earns
     * beyond that is bounded apart.
     */
    private static double keptHa(PlanProblem problem) {
        Set<String> named = new HashSet<>();
        return problem.jobs().stream()
                .filter(j -> named.add(j.name()) && j.field().status().waiting())
                .mapToDouble(j -> j.weightHa() * j.kept().readyWorth())
                .sum();
    }
}
