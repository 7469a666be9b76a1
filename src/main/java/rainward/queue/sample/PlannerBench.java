package rainward.queue.sample;

import java.util.Arrays;
import java.util.List;
import java.util.function.LongSupplier;
import rainward.queue.bound.UpperBound;
import rainward.queue.plan.Planner;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Effort;

/**
 * Measures the planner on invented days, against the best plans known and against bounds that no
 * plan can exceed.
 */
public final class PlannerBench {

    private static final List<GeneratedDays.Kind> KINDS = List.of(GeneratedDays.Kind.values());
    private static final long WARM_UP_MS = 2_000;

    private final LongSupplier nanos;

    /** Takes a clock from outside; the search knows none. */
    public PlannerBench(LongSupplier nanos) {
        this.nanos = nanos;
    }

    /**
     * One line of the benchmark; medians where several days are behind it.
     *
     * @param fields to be planned
     * @param ms time given to the search
     * @param value of the plan found [ha of full stand]
     * @param best value known for the same days
     * @param ofBestPct how far below the best [%]
     * @param bound that no plan exceeds
     * @param gapPct how far below the bound [%]
     */
    public record Line(
            int fields,
            long ms,
            double value,
            double best,
            double ofBestPct,
            double bound,
            double gapPct) {}

    /**
     * One day.
     *
     * @param day its index
     * @param kind of weather and crew
     * @param line figures
     */
    public record DayLine(int day, GeneratedDays.Kind kind, Line line) {}

    /**
     * What is known of a day from a longer search.
     *
     * @param best value of a plan [ha of full stand]
     * @param bound that no plan exceeds [ha of full stand]
     */
    public record Known(double best, double bound) {}

    /** Searches for a while for nothing, so that the first day is not slower than the others. */
    public void warmUp() {
        planned(GeneratedDays.benchDay(1), WARM_UP_MS);
    }

    /**
     * Plans a day of the benchmark for as long as is given.
     *
     * @param day index, from 0
     * @param ms for the search
     * @param known of it
     */
    public DayLine day(int day, long ms, Known known) {
        PlanProblem problem = GeneratedDays.benchDay(day);
        double value = planned(problem, ms);
        int fields = problem.jobs().size();
        return new DayLine(
                day,
                KINDS.get(day % KINDS.size()),
                line(fields, ms, value, new Known(Math.max(known.best, value), known.bound)));
    }

    /** Searches a day with a number of tries, which any machine can repeat, and bounds it. */
    public static Known known(int day, Effort effort) {
        PlanProblem problem = GeneratedDays.benchDay(day);
        double best = Planner.plan(problem, effort).value().totalHa();
        return new Known(best, UpperBound.of(problem, best));
    }

    /** Plans a large problem, with a bound but no better plan to compare with. */
    public Line large(int fields, int crews, long ms) {
        PlanProblem problem = GeneratedDays.day(GeneratedDays.Kind.TWO_STORMS, 1, fields, crews);
        double value = planned(problem, ms);
        return line(fields, ms, value, new Known(value, UpperBound.of(problem, value)));
    }

    private double planned(PlanProblem problem, long ms) {
        long start = nanos.getAsLong();
        double budget = ms * 1e6;
        Effort effort = Effort.until(1, () -> (nanos.getAsLong() - start) / budget);
        return Planner.plan(problem, effort).value().totalHa();
    }

    private static Line line(int fields, long ms, double value, Known known) {
        return new Line(
                fields,
                ms,
                value,
                known.best,
                100 * (1 - value / known.best),
                known.bound,
                100 * (1 - value / known.bound));
    }

    /** Medians over days; value, best and bound are those of the middle day each. */
    public static Line medians(List<DayLine> days) {
        List<Line> lines = days.stream().map(DayLine::line).toList();
        return new Line(
                lines.get(0).fields(),
                lines.get(0).ms(),
                median(lines.stream().mapToDouble(Line::value).toArray()),
                median(lines.stream().mapToDouble(Line::best).toArray()),
                median(lines.stream().mapToDouble(Line::ofBestPct).toArray()),
                median(lines.stream().mapToDouble(Line::bound).toArray()),
                median(lines.stream().mapToDouble(Line::gapPct).toArray()));
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        int middle = values.length / 2;
        return values.length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
