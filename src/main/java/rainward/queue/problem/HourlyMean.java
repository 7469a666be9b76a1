package rainward.queue.problem;

/** The mean of a value that is given by the hour. */
public final class HourlyMean {

    private HourlyMean() {}

    /**
     * Mean over a stretch, each hour weighted by its minutes.
     *
     * @param values by hour of the horizon; hours past the end count as zero
     * @param start first minute
     * @param finish end, after the start
     */
    public static double of(double[] values, int start, int finish) {
        double sum = 0;
        for (int hour = start / 60; hour * 60 < finish; hour++) {
            double value = hour < values.length ? values[hour] : 0;
            int shared = Math.min(finish, 60 * hour + 60) - Math.max(start, 60 * hour);
            sum += value * shared;
        }
        return sum / (finish - start);
    }
}
