package rainward.weather.trace;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.rng.UniformRandomProvider;
import rainward.weather.climate.Climate;
import rainward.weather.climate.HorizonAir;
import rainward.weather.marginal.RainMarginals;
import rainward.weather.marginal.WetAmounts;
import rainward.weather.marginal.WetPeriod;
import rainward.weather.rain.HourGrid;
import rainward.weather.rain.StormBlock;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.WeightedEnsemble;

/**
 * Turns forecasts into equally likely hourly courses of rain at all their points at once.
 *
 * <p>In each wet period traces are ranked by a {@link LatentField} taken at its middle; the wettest
 * {@code N PoP} of them get the {@link WetAmounts} in that order, so that few traces keep chance
 * and amount nearly to the last one. A {@link StormBlock} puts each amount into hours; where a
 * storm falls is shared by all points of a trace, since storms pass farms some tens of kilometres
 * apart within an hour or two.
 */
public final class TraceMaker {

    private TraceMaker() {}

    /**
     * Traces of all points, from official forecasts alone.
     *
     * @param forecasts one a point, as issued
     * @param settings how many, from which seed, over which horizon
     * @param climate of the region, for what the forecasts do not say
     * @return one entry a forecast, in the same order
     */
    public static List<PointTraces> make(
            List<ForecastSeries> forecasts, TraceSettings settings, Climate climate) {
        return withEnsembles(forecasts.stream().map(PointForecast::of).toList(), settings, climate);
    }

    /**
     * Traces of all points; where ensembles speak of a wet period their members are the traces,
     * moved to the official chance and mean, and where there is no official rain their own.
     *
     * @param forecasts one a point
     * @param settings how many, from which seed, over which horizon
     * @param climate of the region, for what the forecasts do not say
     * @return one entry a forecast, in the same order
     */
    public static List<PointTraces> withEnsembles(
            List<PointForecast> forecasts, TraceSettings settings, Climate climate) {
        WetAmounts amounts = new WetAmounts();
        List<Point> points = forecasts.stream()
                .map(f -> Point.of(f, settings, climate, amounts))
                .toList();
        rain(points, settings);
        return points.stream().map(p -> p.traces(climate)).toList();
    }

    /** One point while its rain is made. */
    private record Point(
            PointForecast forecast,
            ForecastSeries series,
            HourGrid grid,
            RainMarginals marginals,
            RainSheet sheet) {

        static Point of(
                PointForecast forecast,
                TraceSettings settings,
                Climate climate,
                WetAmounts amounts) {
            HourGrid grid = HourGrid.covering(settings.horizon());
            var members = MemberCourses.of(forecast.ensembles(), grid, settings.traces());
            ForecastSeries series =
                    forecast.tellsRain() ? forecast.series() : forecast.withRain(members.outlook());
            RainMarginals marginals = RainMarginals.of(series, settings.horizon(), climate)
                    .recalibrated(forecast.taught(), series.stamp().issuedAt());
            var sheet = new RainSheet(grid, settings.traces(), amounts, members);
            return new Point(forecast, series, grid, marginals, sheet);
        }

        PointTraces traces(Climate climate) {
            var drawn = HorizonAir.over(series.hourly(), grid, series.point(), climate);
            var sun = EvaporationDemand.of(drawn.air(), series.point(), climate.elevationM());
            List<String> warnings = Stream.of(
                            marginals.warnings().stream(), drawn.warning().stream())
                    .flatMap(w -> w)
                    .toList();
            return new PointTraces(
                    sheet.traces(drawn.air(), sun), marginals, new TraceBasis(used(), warnings));
        }

        private List<TraceBasis.MemberUse> used() {
            List<WetPeriod> wet = marginals.periods().stream()
                    .filter(period -> period.probability() > 0)
                    .toList();
            int followed = (int) wet.stream().filter(sheet::followsMembers).count();
            double whole = forecast.ensembles().stream()
                    .mapToDouble(WeightedEnsemble::weight)
                    .sum();
            return forecast.ensembles().stream()
                    .map(e -> TraceBasis.MemberUse.of(e, e.weight() / whole, followed, wet.size()))
                    .toList();
        }
    }

    private static void rain(List<Point> points, TraceSettings settings) {
        LatentField field = new LatentField(
                settings, points.stream().map(p -> p.series.point()).toList());
        List<RainSheet> sheets = points.stream().map(Point::sheet).toList();
        byMiddle(points.stream().map(Point::marginals).toList())
                .forEach((middle, here) -> fall(field, middle, here, sheets));
    }

    private static void fall(
            LatentField field, Instant middle, List<Placed> here, List<RainSheet> sheets) {
        UniformRandomProvider random = field.randomAt(middle);
        RainSheet.Draw draw =
                new RainSheet.Draw(random.nextDouble(), random.nextDouble(), random.nextDouble());
        field.moveTo(middle, random);
        here.forEach(placed ->
                sheets.get(placed.point).add(placed.period, () -> field.at(placed.point), draw));
    }

    private record Placed(int point, WetPeriod period) {}

    /** Wet periods of all points by the middle of the period, in order of time. */
    private static SortedMap<Instant, List<Placed>> byMiddle(List<RainMarginals> marginals) {
        SortedMap<Instant, List<Placed>> byMiddle = new TreeMap<>();
        for (int p = 0; p < marginals.size(); p++) {
            for (WetPeriod period : marginals.get(p).periods()) {
                Instant middle =
                        period.window().from().plus(period.window().length().dividedBy(2));
                byMiddle.computeIfAbsent(middle, m -> new ArrayList<>()).add(new Placed(p, period));
            }
        }
        return byMiddle;
    }
}
