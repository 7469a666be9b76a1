package rainward.weather.trace;

import java.util.List;
import rainward.weather.skill.Recalibration;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.WeightedEnsemble;

/**
 * All that is forecast for one point.
 *
 * @param series the official forecast; its chances and amounts hold
 * @param ensembles courses that services reckon with for the same point; may be empty
 * @param taught what past forecasts for the point teach
 */
public record PointForecast(
        ForecastSeries series, List<WeightedEnsemble> ensembles, Recalibration taught) {

    public PointForecast {
        ensembles = List.copyOf(ensembles);
    }

    /** A forecast alone. */
    public static PointForecast of(ForecastSeries series) {
        return new PointForecast(series, List.of(), Recalibration.NONE);
    }

    boolean tellsRain() {
        return !series.rain().amounts().isEmpty()
                || !series.rain().probabilities().isEmpty();
    }

    /** The official forecast with the rain of another teller. */
    ForecastSeries withRain(ForecastSeries.RainOutlook rain) {
        return new ForecastSeries(
                series.stamp(), series.point(), series.hourly(), rain, series.warnings());
    }
}
