package rainward.queue.shop;

import java.util.List;
import java.util.stream.IntStream;

/**
 * What an item earns by the minutes in which its seed goes in: the best of its options.
 *
 * <p>Seed that goes in over several hours earns the mean of those hours, each weighted by the
 * minutes worked in it.
 */
public final class Yield {

    private final double weight;
    private final List<Option> options;

    /**
     * Prepares the options.
     *
     * @param weight what worth is multiplied with: priority x area [ha]
     * @param options in order of wish
     */
    public Yield(double weight, List<Option> options) {
        this.weight = weight;
        this.options = List.copyOf(options);
    }

    /** What may be sown: worth by hour of the horizon, and how much of a stock it takes. */
    public static final class Option {
        private final double[] worth;
        private final double[] sum;
        private final int[] idleHours;
        private final int stock;
        private final double stockTaken;
        private final int mix;

        /**
         * Prepares running sums.
         *
         * @param worth by hour, zero where it must not be sown
         * @param stock index of the stock it takes from; below zero: none is limited
         * @param stockTaken how much of it
         * @param mix index of the mix; below zero: any machine holds it
         */
        public Option(double[] worth, int stock, double stockTaken, int mix) {
            this.worth = worth.clone();
            this.stock = stock;
            this.stockTaken = stockTaken;
            this.mix = mix;
            sum = new double[worth.length + 1];
            idleHours = new int[worth.length + 1];
            for (int h = 0; h < worth.length; h++) {
                sum[h + 1] = sum[h] + worth[h];
                idleHours[h + 1] = idleHours[h] + (worth[h] > 0 ? 0 : 1);
            }
        }

        /** What any machine holds. */
        public Option(double[] worth, int stock, double stockTaken) {
            this(worth, stock, stockTaken, -1);
        }

        /** Index of the mix; below zero: any machine holds it. */
        public int mix() {
            return mix;
        }

        public int stock() {
            return stock;
        }

        public double stockTaken() {
            return stockTaken;
        }

        /** True where every hour of {@code [start, finish)} has some worth. */
        public boolean allows(int start, int finish) {
            int last = (finish - 1) / 60 + 1;
            return last < idleHours.length && idleHours[last] == idleHours[start / 60];
        }

        /** Worth summed over {@code [start, finish)} [min]. */
        double worthMinutes(int start, int finish) {
            int first = start / 60;
            int last = (finish - 1) / 60;
            if (first == last) {
                return worth[first] * (finish - start);
            }
            double begun = worth[first] * (60 * (first + 1) - start);
            double ended = worth[last] * (finish - 60 * last);
            return begun + 60 * (sum[last] - sum[first + 1]) + ended;
        }
    }

    /** Mix of each option. */
    IntStream mixes() {
        return options.stream().mapToInt(Option::mix);
    }

    public int options() {
        return options.size();
    }

    public Option option(int index) {
        return options.get(index);
    }

    /** Priority x area [ha]. */
    public double weight() {
        return weight;
    }

    /** Mean worth of an option over {@code [start, finish)}; below zero where it is not allowed. */
    public double worth(int index, int start, int finish) {
        Option option = options.get(index);
        if (!option.allows(start, finish)) {
            return -1;
        }
        return option.worthMinutes(start, finish) / (finish - start);
    }

    /** Mean worth of an option over several stretches; below zero where one is not allowed. */
    public double worth(int index, List<int[]> parts) {
        double sum = 0;
        int minutes = 0;
        for (int[] part : parts) {
            if (!options.get(index).allows(part[0], part[1])) {
                return -1;
            }
            sum += options.get(index).worthMinutes(part[0], part[1]);
            minutes += part[1] - part[0];
        }
        return sum / minutes;
    }

    /** True where some option is worth something in an hour. */
    public boolean anyIn(int hour) {
        return options.stream().anyMatch(o -> hour < o.worth.length && o.worth[hour] > 0);
    }
}
