package rainward.queue.bound;

import java.util.TreeSet;
import rainward.queue.shop.OpenTime;
import rainward.queue.shop.Task;
import rainward.queue.shop.Yield;

/**
 * The minutes at which a field's seeding may end, hour by hour, as far as the bound must look: what
 * it earns and what hours it takes are piecewise linear in its end, so only the ends of the pieces
 * count.
 *
 * @param minutes of seeding; zero where it may rest over a night and takes no known hours
 * @param ends by hour
 * @param earnedWorth for each end [ha of full stand]
 */
record SeedingEnds(int minutes, int[][] ends, double[][] earnedWorth) {

    static SeedingEnds of(Task seed, int hours, int earliest) {
        int minutes = BoundedWork.fastest(seed);
        int longest = seed.hands().stream().mapToInt(Task.Hand::minutes).max().orElse(0);
        boolean mayRest = longest > OpenTime.IN_ONE_GO_MINUTES;
        int[][] ends = new int[hours][];
        double[][] earnedWorth = new double[hours][];
        for (int h = 0; h < hours; h++) {
            TreeSet<Integer> at = new TreeSet<>();
            for (Task.Hand hand : seed.hands()) {
                addEnds(hand.open(), h, mayRest ? 1 : minutes, at);
            }
            int from = earliest;
            ends[h] = at.stream()
                    .filter(e -> e >= from || mayRest)
                    .mapToInt(e -> e)
                    .toArray();
            earnedWorth[h] = new double[ends[h].length];
            for (int i = 0; i < ends[h].length; i++) {
                earnedWorth[h][i] =
                        mayRest ? rested(seed, h, longest) : mean(seed, ends[h][i], minutes);
            }
        }
        return new SeedingEnds(mayRest ? 0 : minutes, ends, earnedWorth);
    }

    /** Ends within {@code (60 h, 60 h + 60]} of work that lies in one stretch. */
    private static void addEnds(OpenTime open, int hour, int minutes, TreeSet<Integer> ends) {
        for (int k = open.at(Math.max(0, 60 * hour - minutes)); k < open.count(); k++) {
            int first = Math.max(open.from(k) + minutes, 60 * hour + 1);
            int last = Math.min(open.latest(k), 60 * hour + 60);
            if (open.from(k) > 60 * hour + 60) {
                return;
            }
            if (first <= last) {
                ends.add(first);
                ends.add(last);
                int crossing = 60 * hour + minutes % 60;
                if (crossing > first && crossing < last) {
                    ends.add(crossing);
                }
            }
        }
    }

    private static double mean(Task seed, int end, int minutes) {
        Yield yield = seed.seeds().orElseThrow();
        double best = 0;
        for (int o = 0; o < yield.options(); o++) {
            best = Math.max(best, yield.worth(o, end - minutes, end));
        }
        return best * yield.weight();
    }

    /** Work that may rest earns at most the best hour that it may touch. */
    private static double rested(Task seed, int hour, int minutes) {
        Yield yield = seed.seeds().orElseThrow();
        int nights = minutes / OpenTime.LEAST_PART_MINUTES;
        int first = hour - (minutes + nights * OpenTime.GREATEST_PAUSE_MINUTES) / 60 - 1;
        double best = 0;
        for (int h = Math.max(0, first); h <= hour; h++) {
            for (int o = 0; o < yield.options(); o++) {
                best = Math.max(best, yield.worth(o, 60 * h, 60 * h + 60));
            }
        }
        return best * yield.weight();
    }

    /** The best end of an hour at given prices of the seeder's minutes; below zero: none. */
    int best(int hour, double[] minutePrice) {
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < ends[hour].length; i++) {
            double value = earnedWorth[hour][i] - price(ends[hour][i], minutePrice);
            if (value > most) {
                most = value;
                best = i;
            }
        }
        return best;
    }

    /** Price of the hours that seeding takes when it ends at a minute. */
    double price(int end, double[] minutePrice) {
        double sum = 0;
        int start = end - minutes;
        for (int h = start / 60; 60 * h < end && minutes > 0; h++) {
            sum += minutePrice[h] * (Math.min(end, 60 * h + 60) - Math.max(start, 60 * h));
        }
        return sum;
    }

    /** Adds the minutes that seeding takes to the use of each hour. */
    void take(int end, double[] use) {
        int start = end - minutes;
        for (int h = start / 60; 60 * h < end && minutes > 0; h++) {
            use[h] += Math.min(end, 60 * h + 60) - Math.max(start, 60 * h);
        }
    }
}
