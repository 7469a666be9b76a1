package rainward.queue.bound;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import rainward.queue.shop.Chain;
import rainward.queue.shop.Item;
import rainward.queue.shop.Shop;
import rainward.queue.shop.Task;

/**
 * A field as the bound sees it.
 *
 * @param site index of its place
 * @param seederClass set of machines that seed it
 * @param wayIn least minutes of a seeder from any other place, in those of the fastest
 * @param ends when its seeding may end, and what it then earns
 * @param needs work that must be done for it
 */
record BoundedField(int site, int seederClass, int wayIn, SeedingEnds ends, List<Need> needs) {

    /**
     * Work.
     *
     * @param machines set of machines that can do it
     * @param minutes of the fastest of them
     * @param aheadMinutes by which it is done before seeding ends, at least
     */
    record Need(int machines, double workMinutes, int aheadMinutes) {

        /** Hour in which it must be done, for seeding that ends in {@code hour}. */
        int dueHour(int hour) {
            return Math.max(0, Math.floorDiv(60 * hour + 59 - aheadMinutes, 60));
        }
    }

    /** Reads an item; empty where nothing is seeded any more. */
    static Optional<BoundedField> of(Item item, BoundedWork work) {
        Chain chain = item.chains().get(0);
        int seeding = 0;
        while (seeding < chain.tasks().size()
                && chain.tasks().get(seeding).seeds().isEmpty()) {
            seeding++;
        }
        if (seeding == chain.tasks().size()) {
            return Optional.empty();
        }
        Task seed = chain.tasks().get(seeding);
        List<Need> needs = new ArrayList<>();
        int ahead = 0;
        for (int t = seeding; t >= 0; t--) {
            Task task = chain.tasks().get(t);
            int minutes = BoundedWork.fastest(task);
            needs.add(new Need(work.classOf(task), minutes, ahead));
            ahead += minutes + (t > 0 ? task.waits().least() : 0);
        }
        Collections.reverse(needs);
        SeedingEnds ends = SeedingEnds.of(seed, work.hours(), chain.ready() + ahead);
        return Optional.of(new BoundedField(
                seed.site(), work.classOf(seed), wayIn(seed, work.shop()), ends, needs));
    }

    private static int wayIn(Task seed, Shop shop) {
        Shop.Ways ways = shop.ways();
        int least = Integer.MAX_VALUE;
        for (Task.Hand hand : seed.hands()) {
            if (shop.crew().machineSite()[hand.machine()] == seed.site()) {
                return 0;
            }
            for (int from = 0; from < ways.sites(); from++) {
                if (from != seed.site()) {
                    int minutes = ways.road()[hand.machine()][from * ways.sites() + seed.site()];
                    least = Math.min(least, minutes);
                }
            }
        }
        double slowest = seed.hands().stream()
                .mapToDouble(h -> (double) BoundedWork.fastest(seed) / h.minutes())
                .min()
                .orElse(0);
        return least == Integer.MAX_VALUE ? 0 : (int) (least * slowest);
    }

    /** What it adds, by the hour in which its seeding ends, work paid at the given prices. */
    double[] gains(double[][] open, double[][] shift, double[][] hourly) {
        double[] minutePrice = hourly[seederClass];
        double[] gains = new double[minutePrice.length];
        for (int h = 0; h < gains.length; h++) {
            int end = ends.best(h, minutePrice);
            gains[h] = end < 0
                    ? Double.NEGATIVE_INFINITY
                    : ends.earnedWorth()[h][end] - ends.price(ends.ends()[h][end], minutePrice);
        }
        for (Need need : needs) {
            double[] openPrice = open[need.machines()];
            double[] shiftPrice = shift[need.machines()];
            for (int h = 0; h < gains.length; h++) {
                int due = need.dueHour(h);
                gains[h] -= need.workMinutes() * (openPrice[due] + shiftPrice[due]);
            }
        }
        return gains;
    }
}
