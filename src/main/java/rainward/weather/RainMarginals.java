package rainward.weather;

import java.util.List;
import rainward.farm.Window;

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
        return new MarginalFit(grid, climate.at(grid.start(), forecast.point()), forecast.rain())
                .marginals();
    }

    /** Expected rain over the whole horizon [mm]. */
    public double meanMm() {
        return periods.stream().mapToDouble(WetPeriod::meanMm).sum();
    }
}
