package rainward.weather.past;

import java.time.Instant;
import java.util.Optional;
import rainward.weather.rain.RainOrigin;

/**
 * What one teller said of a day's rain.
 *
 * @param from who
 * @param toldAt when it was entered or fetched, the latest of several; empty where nobody told
 * @param hours of the day that rest on it
 * @param rainMm in those hours [mm]
 */
public record RainShare(From from, Optional<Instant> toldAt, int hours, double rainMm) {

    /**
     * A teller.
     *
     * @param origin its rank
     * @param by the person who read the gauge, the service, or the region of the climate
     */
    public record From(RainOrigin origin, String by) {}
}
