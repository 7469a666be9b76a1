package rainward.weather.trace;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rainward.weather.marginal.WetAmounts;
import rainward.weather.marginal.WetPeriod;
import rainward.weather.rain.HourGrid;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.StormBlock;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;

/** Rain of one point by hour and trace, filled one wet period after the other. */
final class RainSheet {

    /**
     * Generators of the plane's evenest additive sequence: powers of 1/1.32471795724 (plastic
     * number).
     */
    private static final double STEP_WHERE = 0.7548776662466927;

    private static final double STEP_LENGTH = 0.5698402909980532;

    /** Lifts members that rain above all that do not; latent values stay below it. */
    private static final double ABOVE_ALL_LATENT = 100;

    /** Keeps the latent order among traces of one member. */
    private static final double TIE_BREAK = 1e-6;

    private static final double[] NO_TOTALS = {};
    private static final double LOWEST = Double.NEGATIVE_INFINITY;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /**
     * How far below the wet share's quantile values are still sorted: about three standard errors.
     */
    private static final double MARGIN = 0.25;

    private final HourGrid grid;
    private final WetAmounts amounts;
    private final MemberCourses members;
    private final double[][] rainMm;
    private final int count;
    private final WettestFirst order;
    private final Map<Integer, Double> cuts = new HashMap<>();

    RainSheet(HourGrid grid, int traces, WetAmounts amounts, MemberCourses members) {
        this.grid = grid;
        this.amounts = amounts;
        this.members = members;
        this.rainMm = new double[grid.hours()][traces];
        this.count = traces;
        this.order = new WettestFirst(traces);
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
        double[][] peak30MmPerH = new double[rainMm.length][];
        for (int h = 0; h < peak30MmPerH.length; h++) {
            peak30MmPerH[h] = rainMm[h].clone();
            for (int n = 0; n < peak30MmPerH[h].length; n++) {
                peak30MmPerH[h][n] *= Traces.PEAK_30_OVER_HOUR;
            }
        }
        return new Traces(air, sun, rainMm, peak30MmPerH);
    }

    /**
     * Lets a period's rain fall: ranked and shaped by the members of an ensemble where they speak
     * of the period, by the latent field where not.
     *
     * @param period not before the last one
     * @param field value of each trace, asked for where rain may fall; the highest are the wettest
     * @param draw shared by all points
     */
    void add(WetPeriod period, Supplier<double[]> field, Draw draw) {
        double asked = count * period.probability() + draw.roundShare;
        int wet = Math.min(count, (int) Math.floor(asked));
        if (wet == 0) {
            return;
        }
        double[] latent = field.get();
        if (followsMembers(period)) {
            addMembers(period, latent, draw, wet);
        } else {
            order.rank(latent, wet, cuts.computeIfAbsent(wet, this::cut));
            fall(period, amounts.multiples(wet), draw, NO_TOTALS);
        }
    }

    /** True where members of an ensemble speak of the whole period. */
    boolean followsMembers(WetPeriod period) {
        return members.cover(period.window());
    }

    private double cut(int wet) {
        double dry = 1 - wet / (double) count;
        return dry > 0 ? NORMAL.inverseCumulativeProbability(dry) - MARGIN : LOWEST;
    }

    /** The members' own order and spread, moved to the period's chance and mean. */
    private void addMembers(WetPeriod period, double[] latent, Draw draw, int wet) {
        double[] totals = members.totalsMm(period.window());
        double[] score = new double[totals.length];
        for (int n = 0; n < score.length; n++) {
            boolean rains = totals[n] > 0;
            score[n] = rains ? ABOVE_ALL_LATENT + totals[n] + TIE_BREAK * latent[n] : latent[n];
        }
        order.rank(score, wet, LOWEST);
        double[] above = new double[wet];
        for (int rank = 0; rank < wet; rank++) {
            above[rank] = Math.max(0, totals[order.trace(rank)] - RainAmount.MEASURABLE_MM);
        }
        double sum = Arrays.stream(above).sum();
        double[] multiples = sum > 0
                ? Arrays.stream(above).map(mm -> mm * wet / sum).toArray()
                : amounts.multiples(wet);
        fall(period, multiples, draw, totals);
    }

    private void fall(WetPeriod period, double[] multiples, Draw draw, double[] totals) {
        double aboveMm = Math.max(0, period.meanWetMm() - RainAmount.MEASURABLE_MM);
        Place place = new Place(grid, period.parts());
        for (int rank = 0; rank < multiples.length; rank++) {
            int trace = order.trace(rank);
            double mm = RainAmount.MEASURABLE_MM + aboveMm * multiples[rank];
            if (totals.length > 0 && totals[trace] > 0) {
                likeMember(period, trace, mm / totals[trace]);
            } else {
                place.pick(fraction(draw.whereShare + trace * STEP_WHERE));
                storm(place, fraction(draw.lengthShare + trace * STEP_LENGTH), trace, mm);
            }
        }
    }

    private void likeMember(WetPeriod period, int trace, double scale) {
        double[] course = members.course(trace);
        int last = grid.hourOf(period.window().to());
        for (int h = grid.hourOf(period.window().from()); h < last; h++) {
            put(h, trace, scale * course[h]);
        }
    }

    private void storm(Place place, double length, int trace, double mm) {
        int fits = Math.min(place.hours(), StormBlock.LONGEST_H);
        int hours = StormBlock.hours(length, fits);
        int start = place.from + (int) (place.along * (place.hours() - hours + 1));
        double[] shares = StormBlock.of(hours);
        for (int h = 0; h < hours; h++) {
            put(start + h, trace, mm * shares[h]);
        }
    }

    private void put(int hour, int trace, double mm) {
        rainMm[hour][trace] += mm;
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
                edges[i] = grid.hourOf(parts.get(i).window().from());
                sum += parts.get(i).meanMm() / whole;
                until[i] = sum;
            }
            edges[until.length] =
                    grid.hourOf(parts.get(until.length - 1).window().to());
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
