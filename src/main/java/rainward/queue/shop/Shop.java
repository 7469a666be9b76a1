package rainward.queue.shop;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

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
     * @param seeders what they hold
     */
    public record Start(
            int[] machineSite, int[] personSite, List<OpenTime> drive, int days, Seeders seeders) {

        /** People come from anywhere. */
        public Start(int[] machineSite, List<OpenTime> drive, int days) {
            this(
                    machineSite,
                    drive.stream().mapToInt(d -> -1).toArray(),
                    drive,
                    days,
                    Seeders.empty(machineSite.length));
        }
    }

    /**
     * Machines that seed have to be emptied, cleaned and set for another mix.
     *
     * @param holds mix in each machine; below zero: none
     * @param changeMinutes that it takes to set each for another
     */
    public record Seeders(int[] holds, int[] changeMinutes) {

        /** No machine holds anything, or takes time to be set. */
        public static Seeders empty(int machines) {
            return new Seeders(
                    IntStream.generate(() -> -1).limit(machines).toArray(), new int[machines]);
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

    /** True where a machine may have to be set for another mix, which takes time. */
    boolean changesMix() {
        IntStream sown = items.stream()
                .flatMap(i -> Stream.concat(
                        i.underWay().stream(),
                        i.chains().stream().flatMap(c -> c.tasks().stream())))
                .flatMap(t -> t.seeds().stream())
                .flatMapToInt(Yield::mixes);
        IntStream held = Arrays.stream(crew.seeders().holds());
        return Arrays.stream(crew.seeders().changeMinutes()).anyMatch(m -> m > 0)
                && IntStream.concat(sown, held)
                                .filter(mix -> mix >= 0)
                                .distinct()
                                .count()
                        > 1;
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
