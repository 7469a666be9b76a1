package rainward.weather.source;

import java.time.Instant;
import java.util.List;
import rainward.farm.GeoPoint;
import rainward.weather.rain.InOrder;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.sky.HourlyAir;

/**
 * One service's forecast for one point, as issued: rain in the service's own intervals, the rest by
 * the hour without gaps.
 *
 * @param stamp whose forecast it is and how old
 * @param point where it holds
 * @param hourly air, wind and sky by the hour
 * @param rain amounts and probabilities in their own intervals
 * @param warnings what was missing or left out, in words for the user
 */
public record ForecastSeries(
        Stamp stamp, GeoPoint point, HourlyAir hourly, RainOutlook rain, List<String> warnings) {

    public ForecastSeries {
        warnings = List.copyOf(warnings);
    }

    /**
     * Whose forecast, and how old.
     *
     * @param source short name of the service, for instance {@code nws}
     * @param issuedAt when the service issued it
     * @param pulledAt when it was fetched or last confirmed unchanged
     */
    public record Stamp(String source, Instant issuedAt, Instant pulledAt) {}

    /**
     * Rain as the service gives it.
     *
     * @param amounts liquid total of each interval, in order, without overlap
     * @param probabilities chance of at least 0.254 mm in each interval, in order, without overlap
     */
    public record RainOutlook(List<RainAmount> amounts, List<RainChance> probabilities) {

        public RainOutlook {
            amounts = InOrder.checked("amounts", amounts, RainAmount::window);
            probabilities = InOrder.checked("probabilities", probabilities, RainChance::window);
        }
    }
}
