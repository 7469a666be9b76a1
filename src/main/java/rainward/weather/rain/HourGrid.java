package rainward.weather.rain;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import rainward.farm.Require;
import rainward.farm.Window;

/**
 * Whole hours that cover a window.
 *
 * @param start full hour, UTC
 * @param hours how many, at least 1
 */
public record HourGrid(Instant start, int hours) {

    public HourGrid {
        Require.inRange("horizon hours", hours, 1, 24 * 400);
    }

    /** The hours that a window touches. */
    public static HourGrid covering(Window window) {
        Instant start = window.from().truncatedTo(ChronoUnit.HOURS);
        long seconds = Duration.between(start, window.to()).toSeconds();
        return new HourGrid(start, (int) Math.min(Integer.MAX_VALUE, (seconds + 3599) / 3600));
    }

    public Instant end() {
        return timeOf(hours);
    }

    public Instant timeOf(int hour) {
        return start.plus(Duration.ofHours(hour));
    }

    /** The hour that holds an instant; not held within the grid. */
    public int hourOf(Instant instant) {
        return (int) Math.floorDiv(Duration.between(start, instant).toSeconds(), 3600L);
    }

    public Window window(int from, int to) {
        return new Window(timeOf(from), timeOf(to));
    }

    /** First hour of the grid whose middle is at or after an instant; not held within the grid. */
    public int firstMiddleFrom(Instant instant) {
        long seconds = Duration.between(start, instant).toSeconds() - 1800;
        return (int) Math.max(-1_000_000, Math.min(1_000_000, -Math.floorDiv(-seconds, 3600L)));
    }
}
