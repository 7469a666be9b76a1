package rainward.input.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.farm.DayClock;
import rainward.farm.Require;
import rainward.input.Gap;

/**
 * What is there.
 *
 * @param onHandKg by item; never below zero [kg]
 * @param gaps items of which more was used than there was
 */
public record Stock(Map<String, Double> onHandKg, List<Gap> gaps) {

    public Stock {
        onHandKg = Map.copyOf(onHandKg);
        gaps = List.copyOf(gaps);
    }

    /** Adds up the book, in order of time; on the same instant in the order written. */
    public static Stock of(List<StockEntry> book) {
        Map<String, Double> sums = new TreeMap<>();
        Map<String, Gap> gaps = new TreeMap<>();
        book.stream().sorted(Comparator.comparing(StockEntry::at)).forEach(entry -> {
            double before = sums.getOrDefault(entry.item(), 0.0);
            double after = switch (entry.kind()) {
                case RECEIVED -> before + entry.massKg();
                case USED -> before - entry.massKg();
                case COUNTED -> entry.massKg();
            };
            if (entry.kind() == StockEntry.Kind.COUNTED) {
                gaps.remove(entry.item());
            }
            // Rounding of a bag emptied in parts is no gap.
            if (after < -1e-6) {
                gaps.put(entry.item(), overdrawn(entry.item()));
            }
            sums.put(entry.item(), Math.max(0, after));
        });
        return new Stock(sums, List.copyOf(gaps.values()));
    }

    private static Gap overdrawn(String item) {
        return new Gap(
                item,
                "more was used than the shed had on the book",
                "weigh what is left and enter the count");
    }

    public double of(String item) {
        return onHandKg.getOrDefault(item, 0.0);
    }

    /**
     * The day on which each item runs out.
     *
     * @param demands in any order
     * @param deliveryDays from order to delivery [d]
     * @return one an item that does not reach, the earliest first
     */
    public List<Shortage> shortages(List<Demand> demands, int deliveryDays) {
        Require.inRange("deliveryDays", deliveryDays, 0, 365);
        Map<String, List<Demand>> byItem = new TreeMap<>();
        demands.stream()
                .sorted(Comparator.comparing(Demand::day))
                .forEach(d ->
                        byItem.computeIfAbsent(d.item(), i -> new ArrayList<>()).add(d));
        return byItem.values().stream()
                .flatMap(ofItem -> shortage(ofItem, deliveryDays).stream())
                .sorted(Comparator.comparing(Shortage::runsOutOn))
                .toList();
    }

    private Optional<Shortage> shortage(List<Demand> ofItem, int deliveryDays) {
        String item = ofItem.get(0).item();
        double wantedKg = ofItem.stream().mapToDouble(Demand::massKg).sum();
        double leftKg = of(item);
        for (Demand demand : ofItem) {
            leftKg -= demand.massKg();
            if (leftKg < -1e-6) {
                return Optional.of(new Shortage(
                        item,
                        demand.day(),
                        wantedKg - of(item),
                        demand.day().minusDays(deliveryDays)));
            }
        }
        return Optional.empty();
    }

    /**
     * What a day takes.
     *
     * @param item species or product
     * @param day of the farm's zone
     * @param massKg of it [kg]
     */
    public record Demand(String item, LocalDate day, double massKg) {

        public Demand {
            Require.notNegative("massKg", massKg);
        }
    }

    /**
     * What runs short.
     *
     * @param item species or product
     * @param runsOutOn first day that it is not enough for
     * @param shortKg to the end of the plan [kg]
     * @param orderBy last day to order, so that it is there on the morning it is needed
     */
    public record Shortage(String item, LocalDate runsOutOn, double shortKg, LocalDate orderBy) {

        /** One line for the brief. */
        public String text(String mass, LocalDate today, DayClock clock) {
            return item + " runs out on " + clock.day(runsOutOn) + ", short of " + mass
                    + (orderBy.isBefore(today)
                            ? "; too late to order in time, plan another mix or fetch it"
                            : "; order by " + clock.day(orderBy));
        }
    }
}
