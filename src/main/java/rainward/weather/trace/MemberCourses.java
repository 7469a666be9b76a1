package rainward.weather.trace;

import java.util.ArrayList;
import java.util.List;
import rainward.farm.Window;
import rainward.weather.rain.HourGrid;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.source.EnsembleRain;
import rainward.weather.source.ForecastSeries.RainOutlook;
import rainward.weather.source.WeightedEnsemble;

/**
 * Courses of ensemble members spread over traces, each member as many as its weight asks for
 * (systematic resampling); a trace is the same member at every point, so that what the model knows
 * of neighbouring farms stays whole.
 */
final class MemberCourses {

    /** Period in which members are counted where no official chance is forecast [h]. */
    private static final int PERIOD_H = 6;

    private final HourGrid grid;
    private final int from;
    private final int to;
    private final double[][] byTrace;

    private MemberCourses(HourGrid grid, int from, int to, double[][] byTrace) {
        this.grid = grid;
        this.from = from;
        this.to = to;
        this.byTrace = byTrace;
    }

    /** Courses for so many traces; covers nothing where there is no ensemble. */
    static MemberCourses of(List<WeightedEnsemble> ensembles, HourGrid grid, int traces) {
        int from = 0;
        int to = ensembles.isEmpty() ? 0 : grid.hours();
        List<double[]> members = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        for (WeightedEnsemble ensemble : ensembles) {
            EnsembleRain rain = ensemble.rain();
            int start = grid.hourOf(rain.start());
            from = Math.max(from, start);
            to = Math.min(to, start + rain.hours());
            for (double[] member : rain.rainMm()) {
                members.add(onGrid(member, start, grid.hours()));
                weights.add(ensemble.weight() / rain.members());
            }
        }
        return new MemberCourses(grid, from, to, resampled(members, weights, traces));
    }

    private static double[] onGrid(double[] member, int start, int hours) {
        double[] course = new double[hours];
        for (int h = Math.max(0, start); h < Math.min(hours, start + member.length); h++) {
            course[h] = member[h - start];
        }
        return course;
    }

    private static double[][] resampled(List<double[]> members, List<Double> weights, int traces) {
        double whole = weights.stream().mapToDouble(w -> w).sum();
        double[][] byTrace = new double[members.isEmpty() ? 0 : traces][];
        int member = 0;
        double until = members.isEmpty() ? 0 : weights.get(0);
        for (int n = 0; n < byTrace.length; n++) {
            double at = (n + 0.5) / traces * whole;
            while (at > until && member < members.size() - 1) {
                member++;
                until += weights.get(member);
            }
            byTrace[n] = members.get(member);
        }
        return byTrace;
    }

    /** True where all members speak of the whole window. */
    boolean cover(Window window) {
        return grid.hourOf(window.from()) >= from && grid.hourOf(window.to()) <= to;
    }

    /** Rain of a window on each trace [mm]. */
    double[] totalsMm(Window window) {
        int first = grid.hourOf(window.from());
        int last = grid.hourOf(window.to());
        double[] totals = new double[byTrace.length];
        for (int n = 0; n < totals.length; n++) {
            for (int h = first; h < last; h++) {
                totals[n] += byTrace[n][h];
            }
        }
        return totals;
    }

    /** The hours of a trace's member [mm]. */
    double[] course(int trace) {
        return byTrace[trace];
    }

    /** Chances and amounts as the members have them, for a service that gives nothing else. */
    RainOutlook outlook() {
        List<RainAmount> amounts = new ArrayList<>();
        List<RainChance> chances = new ArrayList<>();
        for (int h = from; h < to; h += PERIOD_H) {
            Window window = grid.window(h, Math.min(to, h + PERIOD_H));
            double wet = 0;
            double sumMm = 0;
            for (double mm : totalsMm(window)) {
                wet += mm >= RainAmount.MEASURABLE_MM ? 1 : 0;
                sumMm += mm;
            }
            amounts.add(new RainAmount(window, sumMm / byTrace.length));
            chances.add(new RainChance(window, wet / byTrace.length));
        }
        return new RainOutlook(amounts, chances);
    }
}
