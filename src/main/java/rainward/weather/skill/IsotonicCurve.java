package rainward.weather.skill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rainward.farm.Require;

/**
 * The rising curve closest to what was seen, by pooling adjacent violators (Ayer et al. 1955, from
 * memory), level over each pool and straight between them.
 *
 * @param pools in order; at least one
 */
public record IsotonicCurve(List<Pool> pools) {

    public IsotonicCurve {
        pools = List.copyOf(pools);
        Require.that(!pools.isEmpty(), "a curve needs a point");
    }

    /**
     * Something seen at a forecast.
     *
     * @param probability forecast
     * @param seenFraction what came of it, 0 to 1
     * @param weight how many cases it stands for, above 0
     */
    record Point(double probability, double seenFraction, double weight) {}

    /**
     * Points that share one level.
     *
     * @param lowProbability the lowest forecast in it
     * @param highProbability the highest
     * @param weight how many cases it stands for
     * @param seenWeight how many of them were wet
     */
    public record Pool(
            double lowProbability, double highProbability, double weight, double seenWeight) {

        static Pool of(Point point) {
            return new Pool(
                    point.probability,
                    point.probability,
                    point.weight,
                    point.weight * point.seenFraction);
        }

        Pool with(Pool higher) {
            return new Pool(
                    lowProbability,
                    higher.highProbability,
                    weight + higher.weight,
                    seenWeight + higher.seenWeight);
        }

        double level() {
            return seenWeight / weight;
        }
    }

    /** Curve through some points; at least one. */
    static IsotonicCurve through(List<Point> points) {
        List<Pool> pools = new ArrayList<>();
        points.stream()
                .sorted(Comparator.comparingDouble(Point::probability))
                .map(Pool::of)
                .forEach(pool -> add(pools, pool));
        return new IsotonicCurve(pools);
    }

    private static void add(List<Pool> pools, Pool next) {
        Pool merged = next;
        while (!pools.isEmpty() && mustMerge(pools.get(pools.size() - 1), merged)) {
            merged = pools.remove(pools.size() - 1).with(merged);
        }
        pools.add(merged);
    }

    private static boolean mustMerge(Pool before, Pool after) {
        return before.level() >= after.level()
                || before.highProbability() == after.lowProbability();
    }

    /** The curve's level at a forecast; that of the first or last pool beyond them. */
    double at(double probability) {
        Pool before = pools.get(0);
        for (Pool pool : pools) {
            if (pool.highProbability() >= probability) {
                return between(before, pool, probability);
            }
            before = pool;
        }
        return before.level();
    }

    private static double between(Pool before, Pool after, double probability) {
        double gap = after.lowProbability() - before.highProbability();
        double along = (probability - before.highProbability()) / gap;
        return gap <= 0 || along >= 1
                ? after.level()
                : before.level() + along * (after.level() - before.level());
    }
}
