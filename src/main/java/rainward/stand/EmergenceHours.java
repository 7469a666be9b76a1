package rainward.stand;

/** Counts of traces by seeding hour and hours to emergence: quantiles without sorting. */
final class EmergenceHours {
    private final int[][] counts;
    private final int[] totals;

    EmergenceHours(int seedingHours, int greatestHours) {
        counts = new int[seedingHours][greatestHours + 1];
        totals = new int[seedingHours];
    }

    void add(int seedingHour, int hours) {
        counts[seedingHour][hours]++;
        totals[seedingHour]++;
    }

    boolean none(int seedingHour) {
        return totals[seedingHour] == 0;
    }

    /** Least time in which at least that share of traces is up, middle of its hour [d]. */
    double quantileDays(int seedingHour, double share) {
        int left = (int) Math.ceil(share * totals[seedingHour]);
        int hours = 0;
        while (left > counts[seedingHour][hours]) {
            left -= counts[seedingHour][hours];
            hours++;
        }
        return (hours + 0.5) / 24;
    }
}
