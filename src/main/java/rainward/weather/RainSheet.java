package rainward.weather;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;

/** Rain of one point by hour and trace, filled one wet period after the other. */
final class RainSheet {

    /**
     * Greatest 30-minute intensity over the hour's mean intensity, Yin, Xie, Nearing and Wang 2007
     * (Catena 70:306-312), from fixed 60-minute data of 456 storms.
     */
    private static final double PEAK_30_OVER_HOUR = 1.668;

    /**
     * Generators of the plane's evenest additive sequence: powers of 1/1.32471795724 (plastic
     * number).
     */
    private static final double STEP_WHERE = 0.7548776662466927;

    private static final double STEP_LENGTH = 0.5698402909980532;

    private final HourGrid grid;
    private final WetAmounts amounts;
    private final double[][] rainMm;
    private final double[][] peak30MmPerH;
    private final long[] order;

    RainSheet(HourGrid grid, int traces, WetAmounts amounts) {
        this.grid = grid;
        this.amounts = amounts;
        this.rainMm = new double[grid.hours()][traces];
        this.peak30MmPerH = new double[grid.hours()][traces];
        this.order = new long[traces];
    }

    /**
     * What is drawn once for a period and shared by all points.
     *
     * @param roundShare decides whether a part of a trace is rounded up to a wet one, 0 to 1
     * @param whereShare begins the sequence of storm places, 0 to 1
     * @param lengthShare begins the sequence of storm durations, 0 to 1
     */
    record Draw(double roundShare, double whereShare, double lengthShare) {}

    Traces traces(HourlyAir air, EvaporationDemand sun) {
        return new Traces(air, sun, rainMm, peak30MmPerH);
    }

    /**
     * Lets a period's rain fall.
     *
     * @param period not before the last one
     * @param latent value of each trace; the highest are the wettest
     * @param draw shared by all points
     */
    void add(WetPeriod period, double[] latent, Draw draw) {
        int wet = (int) Math.floor(order.length * period.probability() + draw.roundShare);
        if (wet == 0) {
            return;
        }
        rank(latent);
        double aboveMm = Math.max(0, period.meanWetMm() - RainAmount.MEASURABLE_MM);
        double[] multiples = amounts.multiples(Math.min(wet, order.length));
        Place place = new Place(grid, period.parts());
        for (int rank = 0; rank < multiples.length; rank++) {
            int trace = (int) order[order.length - 1 - rank] & TRACE_BITS;
            double mm = RainAmount.MEASURABLE_MM + aboveMm * multiples[rank];
            place.pick(fraction(draw.whereShare + trace * STEP_WHERE));
            storm(place, fraction(draw.lengthShare + trace * STEP_LENGTH), trace, mm);
        }
    }

    private static final int TRACE_BITS = 0xFFFF;

    /**
     * Sorts traces by latent value: the value in the high bits of a number, the trace in the low.
     */
    private void rank(double[] latent) {
        for (int n = 0; n < order.length; n++) {
            long bits = Double.doubleToRawLongBits(latent[n]);
            long sortable = bits ^ ((bits >> 63) & Long.MAX_VALUE);
            order[n] = (sortable & ~(long) TRACE_BITS) | n;
        }
        Arrays.sort(order);
    }

    private void storm(Place place, double length, int trace, double mm) {
        int fits = Math.min(place.hours(), StormBlock.LONGEST_H);
        int hours = 1 + (int) (length * fits);
        int start = place.from + (int) (place.along * (place.hours() - hours + 1));
        double[] shares = StormBlock.of(hours);
        for (int h = 0; h < hours; h++) {
            double fell = mm * shares[h];
            rainMm[start + h][trace] += fell;
            peak30MmPerH[start + h][trace] += fell * PEAK_30_OVER_HOUR;
        }
    }

    private static double fraction(double value) {
        return value - Math.floor(value);
    }

    /** Finds the part of a period for a storm: each part as likely as its share of the mean. */
    private static final class Place {

        private final int[] edges;
        private final double[] until;
        private int from;
        private int to;
        private double along;

        Place(HourGrid grid, List<WetPeriod.Part> parts) {
            edges = new int[parts.size() + 1];
            until = new double[parts.size()];
            double sum = 0;
            double whole = parts.stream().mapToDouble(WetPeriod.Part::meanMm).sum();
            for (int i = 0; i < until.length; i++) {
                edges[i] = hour(grid, parts.get(i).window().from());
                sum += parts.get(i).meanMm() / whole;
                until[i] = sum;
            }
            edges[until.length] =
                    hour(grid, parts.get(until.length - 1).window().to());
        }

        private static int hour(HourGrid grid, java.time.Instant instant) {
            return (int) Duration.between(grid.start(), instant).toHours();
        }

        void pick(double uniform) {
            int part = 0;
            while (part < until.length - 1 && uniform >= until[part]) {
                part++;
            }
            double before = part == 0 ? 0 : until[part - 1];
            from = edges[part];
            to = edges[part + 1];
            along = Math.max(0, Math.min(0.999_999, (uniform - before) / (until[part] - before)));
        }

        int hours() {
            return to - from;
        }
    }
}
