package rainward.weather.rain;

import java.time.Instant;
import rainward.farm.Require;
import rainward.farm.Window;

/**
 * Rain that somebody measured or analysed at a place.
 *
 * @param window in which it fell
 * @param amountMm total over the window [mm]
 * @param source short name: {@code gauge}, {@code stage4}, {@code acis}, {@code station}
 * @param fetchedAt when this value was fetched or entered; a later one replaces an earlier one
 * @param by who says so: the person who read the gauge, else the service
 */
public record RainObservation(
        Window window, double amountMm, String source, Instant fetchedAt, String by) {

    public RainObservation {
        Require.that(window.to().isAfter(window.from()), "rain fell in no time: " + window);
        Require.inRange("amountMm", amountMm, 0, 1000);
        Require.named("source", source);
    }

    /** What a source says for itself. */
    public RainObservation(Window window, double amountMm, String source, Instant fetchedAt) {
        this(window, amountMm, source, fetchedAt, source);
    }
}
