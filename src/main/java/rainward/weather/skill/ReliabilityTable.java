package rainward.weather.skill;

import java.util.List;
import java.util.stream.IntStream;

/**
 * How often it rained by what was forecast, in tenths.
 *
 * @param rows tenths that have cases, in order
 */
public record ReliabilityTable(List<Row> rows) {

    private static final int TENTHS = 10;

    /** Standard normal quantile of 95 %, for intervals of 90 %. */
    private static final double Z_90 = 1.6449;

    public ReliabilityTable {
        rows = List.copyOf(rows);
    }

    /** Table of some cases; empty for none. */
    public static ReliabilityTable of(List<ForecastCase> cases) {
        return new ReliabilityTable(IntStream.range(0, TENTHS)
                .mapToObj(tenth -> in(cases, tenth))
                .filter(here -> !here.isEmpty())
                .map(Row::of)
                .toList());
    }

    private static List<ForecastCase> in(List<ForecastCase> cases, int tenth) {
        return cases.stream()
                .filter(c -> Math.min(TENTHS - 1, (int) (c.probability() * TENTHS + 1e-9)) == tenth)
                .toList();
    }

    /**
     * One tenth.
     *
     * @param cases how many
     * @param forecastProbability mean forecast
     * @param seenFraction share of them that was wet
     * @param lowFraction lower end of a 90 % interval for it (Wilson 1927)
     * @param highFraction upper end
     */
    public record Row(
            int cases,
            double forecastProbability,
            double seenFraction,
            double lowFraction,
            double highFraction) {

        static Row of(List<ForecastCase> cases) {
            int n = cases.size();
            double forecast = cases.stream()
                    .mapToDouble(ForecastCase::probability)
                    .average()
                    .orElseThrow();
            double seen =
                    cases.stream().mapToDouble(ForecastCase::outcome).average().orElseThrow();
            double z2 = Z_90 * Z_90;
            double centre = (seen + z2 / (2 * n)) / (1 + z2 / n);
            double half =
                    Z_90 / (1 + z2 / n) * Math.sqrt(seen * (1 - seen) / n + z2 / (4.0 * n * n));
            return new Row(
                    n, forecast, seen, Math.max(0, centre - half), Math.min(1, centre + half));
        }
    }
}
