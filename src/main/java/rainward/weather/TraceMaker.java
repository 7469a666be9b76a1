package rainward.weather;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.rng.UniformRandomProvider;

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
     * Traces of all points.
     *
     * @param forecasts one a point, as issued
     * @param settings how many, from which seed, over which horizon
     * @param climate of the region, for what the forecasts do not say
     * @return one entry a forecast, in the same order
     */
    public static List<PointTraces> make(
            List<ForecastSeries> forecasts, TraceSettings settings, Climate climate) {
        HourGrid grid = HourGrid.covering(settings.horizon());
        List<RainMarginals> marginals = forecasts.stream()
                .map(f -> RainMarginals.of(f, settings.horizon(), climate))
                .toList();
        return make(forecasts, marginals, settings, climate, grid);
    }

    private static List<PointTraces> make(
            List<ForecastSeries> forecasts,
            List<RainMarginals> marginals,
            TraceSettings settings,
            Climate climate,
            HourGrid grid) {
        List<RainSheet> sheets = rain(forecasts, marginals, settings, grid);
        List<PointTraces> made = new ArrayList<>();
        for (int p = 0; p < forecasts.size(); p++) {
            ForecastSeries forecast = forecasts.get(p);
            var drawn = HorizonAir.over(forecast.hourly(), grid, forecast.point(), climate);
            var sun = EvaporationDemand.of(drawn.air(), forecast.point(), climate.elevationM());
            List<String> warnings = Stream.of(
                            marginals.get(p).warnings().stream(), drawn.warning().stream())
                    .flatMap(w -> w)
                    .toList();
            Traces traces = sheets.get(p).traces(drawn.air(), sun);
            made.add(new PointTraces(traces, marginals.get(p), warnings));
        }
        return made;
    }

    /** Rain of all points. */
    static List<RainSheet> rain(
            List<ForecastSeries> forecasts,
            List<RainMarginals> marginals,
            TraceSettings settings,
            HourGrid grid) {
        WetAmounts amounts = new WetAmounts();
        List<RainSheet> sheets = forecasts.stream()
                .map(f -> new RainSheet(grid, settings.traces(), amounts))
                .toList();
        LatentField field = new LatentField(
                settings, forecasts.stream().map(ForecastSeries::point).toList());
        byMiddle(marginals).forEach((middle, here) -> fall(field, middle, here, sheets));
        return sheets;
    }

    private static void fall(
            LatentField field, Instant middle, List<Placed> here, List<RainSheet> sheets) {
        UniformRandomProvider random = field.randomAt(middle);
        RainSheet.Draw draw =
                new RainSheet.Draw(random.nextDouble(), random.nextDouble(), random.nextDouble());
        double[][] latent = field.moveTo(middle, random);
        here.forEach(
                placed -> sheets.get(placed.point).add(placed.period, latent[placed.point], draw));
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
