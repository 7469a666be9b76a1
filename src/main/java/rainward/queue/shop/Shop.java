package rainward.queue.shop;

import java.util.List;

/**
 * All that the search needs to know. Times are minutes from the start of the horizon.
 *
 * @param now the moment of planning
 * @param ways how long it takes from place to place
 * @param crew where machines and people are
 * @param items in a fixed order
 * @param prices of driving and overtime
 * @param stock of each limited kind of seed
 */
public record Shop(
        int now, Ways ways, Start crew, List<Item> items, Prices prices, double[] stock) {

    public Shop {
        items = List.copyOf(items);
    }

    /**
     * Minutes from place to place, {@code [from * sites + to]}.
     *
     * @param sites number of places
     * @param road for each machine, hitching counted in
     * @param car for people on their way to a machine
     */
    public record Ways(int sites, int[][] road, int[] car) {}

    /**
     * Where the crew starts.
     *
     * @param machineSite place of each machine
     * @param personSite place of each person; below zero: anywhere
     * @param drive when each person may drive on the road
     * @param days number of working days, for overtime
     */
    public record Start(int[] machineSite, int[] personSite, List<OpenTime> drive, int days) {

        /** People come from anywhere. */
        public Start(int[] machineSite, List<OpenTime> drive, int days) {
            this(machineSite, drive.stream().mapToInt(d -> -1).toArray(), drive, days);
        }
    }

    /**
     * Prices in the unit of the yield.
     *
     * @param drivingPerMinute a minute of a machine on the road
     * @param overtimePerMinute a minute of work after the shift
     */
    public record Prices(double drivingPerMinute, double overtimePerMinute) {}

    public int machines() {
        return crew.machineSite().length;
    }

    public int people() {
        return crew.drive().size();
    }

    /** Most tasks of any way to finish an item. */
    int longestChain() {
        return items.stream()
                .flatMap(i -> i.chains().stream())
                .mapToInt(c -> c.tasks().size())
                .max()
                .orElse(0);
    }
}
