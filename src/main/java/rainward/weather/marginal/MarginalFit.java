package rainward.weather.marginal;

import java.time.Instant;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.farm.Window;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.marginal.WetPeriod.Part;
import rainward.weather.rain.ChanceRuns;
import rainward.weather.rain.HourGrid;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.source.ForecastSeries.RainOutlook;

/**
 * Brings amounts and probabilities, each in intervals of its own, to periods that keep both.
 *
 * <ol>
 *   <li>Periods are the intervals of probability, long ones cut as {@link ChanceRuns} says; hours
 *       without one are cut alike.
 *   <li>An amount is shared over the hours of its interval by the chance of rain in each; the sum
 *       over the interval stays the source's. No probability is multiplied by an amount.
 *   <li>Probability without amount (amounts stop first): the month's mean for a wet period of that
 *       length; the month is that of the day, by mean solar time.
 *   <li>Amount m without probability: {@code m / (m + c/2)}, c the month's mean for a wet period.
 *       Our own rule, no source; nought stays nought.
 *   <li>Neither: the month's chance and mean.
 *   <li>Amount where all chances are zero: below 0.254 mm it is left out; from there on the
 *       probability is taken as unknown.
 *   <li>Wet means at least 0.254 mm: a smaller mean for a wet period is raised to that.
 *   <li>A chance below a quarter whose wet mean were over four times the month's wet day is raised
 *       until it is not, up to a quarter: chance and amount do not speak of the same rain.
 * </ol>
 */
final class MarginalFit {

    private static final double SMALL_CHANCE = 0.25;
    private static final double HUGE_WET_DAYS = 4;
    private static final int NONE = -1;

    private final HourGrid grid;
    private final Function<Instant, MonthlyClimate> usual;
    private final List<Span> amountHours;
    private final int[] amountOf;
    private final int[] chanceOf;
    private final double[] totalMm;
    private final List<RainChance> chances;
    private final double[] hourMm;
    private final List<String> warnings = new ArrayList<>();

    /**
     * A fit.
     *
     * @param grid hours to be covered
     * @param usual what the month of an instant is like
     * @param rain as forecast
     */
    MarginalFit(HourGrid grid, Function<Instant, MonthlyClimate> usual, RainOutlook rain) {
        this.grid = grid;
        this.usual = usual;
        this.chances =
                rain.probabilities().stream().flatMap(MarginalFit::periods).toList();
        this.amountHours = reaches(rain.amounts(), RainAmount::window);
        this.amountOf = owners(amountHours);
        this.chanceOf = owners(reaches(chances, RainChance::window));
        this.totalMm = new double[rain.amounts().size()];
        this.hourMm = new double[grid.hours()];
        for (int i = 0; i < totalMm.length; i++) {
            totalMm[i] = insideMm(rain.amounts().get(i), amountHours.get(i));
        }
    }

    private static Stream<RainChance> periods(RainChance run) {
        return ChanceRuns.periods(run.window()).stream()
                .map(window -> new RainChance(window, run.probability()));
    }

    RainMarginals marginals() {
        doubtZeroChances();
        List<Span> spans = spans();
        shareAmounts(spans);
        List<WetPeriod> periods = spans.stream().map(this::period).toList();
        warnClimate(periods);
        return new RainMarginals(periods, warnings);
    }

    /** For each interval, the hours of the horizon whose middle it holds; none is an empty span. */
    private <T> List<Span> reaches(List<T> all, Function<T, Window> window) {
        return all.stream().map(window).map(this::reach).toList();
    }

    private Span reach(Window window) {
        int from = Math.max(0, grid.firstMiddleFrom(window.from()));
        int to = Math.min(grid.hours(), grid.firstMiddleFrom(window.to()));
        return new Span(from, Math.max(from, to), Double.NaN);
    }

    private int[] owners(List<Span> reaches) {
        int[] owner = new int[grid.hours()];
        Arrays.fill(owner, NONE);
        for (int i = 0; i < reaches.size(); i++) {
            Span reach = reaches.get(i);
            if (reach.hours() > 0) {
                Arrays.fill(owner, reach.from, reach.to, i);
            }
        }
        return owner;
    }

    /** Total of the part of an interval that lies in the horizon, spread evenly over its hours. */
    private double insideMm(RainAmount amount, Span inside) {
        int whole = grid.firstMiddleFrom(amount.window().to())
                - grid.firstMiddleFrom(amount.window().from());
        return whole <= 0 ? 0 : amount.amountMm() * inside.hours() / whole;
    }

    private void doubtZeroChances() {
        for (int i = 0; i < totalMm.length; i++) {
            Span hours = amountHours.get(i);
            if (totalMm[i] <= 0 || !neverWet(hours)) {
                continue;
            }
            if (totalMm[i] < RainAmount.MEASURABLE_MM) {
                warn("%.2f mm with no chance of rain is left out", i);
                totalMm[i] = 0;
            } else {
                warn("%.1f mm against no chance of rain: its chance is taken as unknown", i);
                Arrays.fill(chanceOf, hours.from, hours.to, NONE);
            }
        }
    }

    private boolean neverWet(Span hours) {
        for (int h = hours.from; h < hours.to; h++) {
            if (chanceOf[h] == NONE || chance(chanceOf[h]) > 0) {
                return false;
            }
        }
        return hours.hours() > 0;
    }

    private void warn(String what, int amount) {
        Span hours = amountHours.get(amount);
        Window window = grid.window(hours.from, hours.to);
        String text = String.format(Locale.ROOT, what, totalMm[amount]);
        warnings.add("rain " + window.from() + " to " + window.to() + ": " + text);
    }

    private double chance(int index) {
        return chances.get(index).probability();
    }

    /** Hours that share a chance: {@code chance} is NaN where an amount must tell it. */
    private record Span(int from, int to, double chance) {

        int hours() {
            return to - from;
        }
    }

    private List<Span> spans() {
        List<Span> spans = new ArrayList<>();
        int from = 0;
        for (int h = 1; h <= grid.hours(); h++) {
            if (h == grid.hours() || key(h) != key(from)) {
                cut(spans, from, h);
                from = h;
            }
        }
        return spans;
    }

    /** Chance intervals first, then amounts that stand alone, then nothing. */
    private int key(int hour) {
        if (chanceOf[hour] != NONE) {
            return chanceOf[hour];
        }
        return amountOf[hour] == NONE ? NONE : chances.size() + amountOf[hour];
    }

    private void cut(List<Span> spans, int from, int to) {
        for (Window period : ChanceRuns.periods(grid.window(from, to))) {
            int start = grid.hourOf(period.from());
            int end = grid.hourOf(period.to());
            spans.add(new Span(start, end, spanChance(start, end)));
        }
    }

    private double spanChance(int from, int to) {
        if (chanceOf[from] != NONE) {
            return chance(chanceOf[from]);
        }
        return amountOf[from] == NONE ? month(from, to).wetChance(to - from) : Double.NaN;
    }

    private MonthlyClimate month(int from, int to) {
        return usual.apply(grid.timeOf((from + to) / 2));
    }

    private void shareAmounts(List<Span> spans) {
        double[] weight = new double[grid.hours()];
        for (Span span : spans) {
            Arrays.fill(weight, span.from, span.to, span.chance);
            double usualMm =
                    span.chance * month(span.from, span.to).meanWetMm(span.hours()) / span.hours();
            for (int h = span.from; h < span.to; h++) {
                hourMm[h] = amountOf[h] == NONE ? usualMm : 0;
            }
        }
        for (int i = 0; i < totalMm.length; i++) {
            share(totalMm[i], amountHours.get(i), weight);
        }
    }

    /** Shares an amount by weight; an hour of unknown chance weighs as the mean of the others. */
    private void share(double mm, Span hours, double[] weight) {
        double known = 0;
        int count = 0;
        for (int h = hours.from; h < hours.to; h++) {
            if (!Double.isNaN(weight[h])) {
                known += weight[h];
                count++;
            }
        }
        double unknown = known > 0 ? known / count : 1;
        double sum = known + unknown * (hours.hours() - count);
        for (int h = hours.from; h < hours.to; h++) {
            hourMm[h] = mm <= 0 ? 0 : mm * (Double.isNaN(weight[h]) ? unknown : weight[h]) / sum;
        }
    }

    private WetPeriod period(Span span) {
        double mm = sum(span.from, span.to);
        double chance = plausible(span, mm);
        double scale = mm > 0 ? Math.max(1, RainAmount.MEASURABLE_MM * chance / mm) : 1;
        List<Part> parts = new ArrayList<>();
        int from = span.from;
        for (int h = span.from + 1; h <= span.to; h++) {
            if (h == span.to || amountOf[h] != amountOf[from]) {
                double partMm = mm > 0
                        ? scale * sum(from, h)
                        : RainAmount.MEASURABLE_MM * chance * (h - from) / span.hours();
                parts.add(new Part(grid.window(from, h), partMm, amountOf[from] == NONE));
                from = h;
            }
        }
        return new WetPeriod(grid.window(span.from, span.to), chance, parts);
    }

    private double plausible(Span span, double mm) {
        MonthlyClimate month = month(span.from, span.to);
        double chance = span.chance;
        if (Double.isNaN(chance)) {
            chance = mm <= 0 ? 0 : mm / (mm + month.meanWetMm(span.hours()) / 2);
        }
        double huge = HUGE_WET_DAYS * month.meanWetDayMm();
        boolean odd = chance > 0 && chance < SMALL_CHANCE && mm > chance * huge;
        return odd ? Math.min(SMALL_CHANCE, mm / huge) : chance;
    }

    private double sum(int from, int to) {
        double sum = 0;
        for (int h = from; h < to; h++) {
            sum += hourMm[h];
        }
        return sum;
    }

    private void warnClimate(List<WetPeriod> periods) {
        List<Integer> bare = new ArrayList<>();
        List<Integer> unspoken = new ArrayList<>();
        for (int h = 0; h < grid.hours(); h++) {
            if (amountOf[h] == NONE && totalMm.length + chances.size() > 0) {
                (chanceOf[h] == NONE ? unspoken : bare).add(h);
            }
        }
        warnHours(bare, "no rain amounts are forecast; the usual wet period of %s is used");
        warnHours(unspoken, "no rain is forecast; the usual chance and amount of %s is used");
        if (chances.isEmpty() && !periods.isEmpty()) {
            warnings.add("no chance of rain is forecast; it is judged from the amounts");
        }
    }

    private void warnHours(List<Integer> hours, String text) {
        if (!hours.isEmpty()) {
            Window window = grid.window(hours.get(0), hours.get(hours.size() - 1) + 1);
            String months = hours.stream()
                    .map(h -> month(h, h + 1).month())
                    .distinct()
                    .map(month -> month.getDisplayName(TextStyle.FULL, Locale.ENGLISH))
                    .collect(Collectors.joining(" and "));
            warnings.add("rain " + window.from() + " to " + window.to() + ": "
                    + String.format(Locale.ROOT, text, months));
        }
    }
}
