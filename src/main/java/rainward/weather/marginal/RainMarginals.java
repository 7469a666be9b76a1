package rainward.weather.marginal;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rainward.farm.Window;
import rainward.weather.climate.Climate;
import rainward.weather.rain.HourGrid;
import rainward.weather.rain.InOrder;
import rainward.weather.skill.Recalibration;
import rainward.weather.source.ForecastSeries;

/**
 * Chance and amount of rain through a horizon, one period after the other: what traces have to
 * keep. The rules that bring a service's two rasters together are those of {@link MarginalFit}.
 *
 * @param periods cover the horizon in order, without gaps
 * @param warnings what was made up or left out, in words for the user
 */
public record RainMarginals(List<WetPeriod> periods, List<String> warnings) {

    public RainMarginals {
        periods = InOrder.checked("wet periods", periods, WetPeriod::window);
        warnings = List.copyOf(warnings);
    }

    /**
     * Marginals of a forecast.
     *
     * @param forecast as issued
     * @param horizon to be covered; widened to whole hours
     * @param climate of the region, for what the forecast does not say
     */
    public static RainMarginals of(ForecastSeries forecast, Window horizon, Climate climate) {
        HourGrid grid = HourGrid.covering(horizon);
        return new MarginalFit(
                        grid, instant -> climate.at(instant, forecast.point()), forecast.rain())
                .marginals();
    }

    /**
     * The same periods with chances as past forecasts taught; the amount of a wet period stays, so
     * the expected amount moves with its chance. Chances from climate stay.
     *
     * @param taught by past forecasts
     * @param issuedAt of the forecast, for the lead time
     */
    public RainMarginals recalibrated(Recalibration taught, Instant issuedAt) {
        List<WetPeriod> moved = periods.stream()
                .map(period -> recalibrated(period, taught, issuedAt))
                .toList();
        long changed = IntStream.range(0, moved.size())
                .filter(i ->
                        Math.abs(moved.get(i).probability() - periods.get(i).probability())
                                >= 0.005)
                .count();
        Stream<String> note = changed == 0
                ? Stream.of()
                : Stream.of(changed + " of " + moved.size()
                        + " chances of rain are corrected by what past forecasts came to");
        return new RainMarginals(moved, Stream.concat(warnings.stream(), note).toList());
    }

    private static WetPeriod recalibrated(
            WetPeriod period, Recalibration taught, Instant issuedAt) {
        double leadHours = Duration.between(issuedAt, period.window().from()).toMinutes() / 60.0;
        return period.climateShare() == 1
                ? period
                : period.withChance(taught.apply(period.probability(), Math.max(0, leadHours)));
    }

    /** Expected rain over the whole horizon [mm]. */
    public double meanMm() {
        return periods.stream().mapToDouble(WetPeriod::meanMm).sum();
    }
}
