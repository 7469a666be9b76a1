package rainward.weather;

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
record HourGrid(Instant start, int hours) {

    HourGrid {
        Require.inRange("horizon hours", hours, 1, 24 * 400);
    }

    /** The hours that a window touches. */
    static HourGrid covering(Window window) {
        Instant start = window.from().truncatedTo(ChronoUnit.HOURS);
        long seconds = Duration.between(start, window.to()).toSeconds();
        return new HourGrid(start, (int) Math.min(Integer.MAX_VALUE, (seconds + 3599) / 3600));
    }

    Instant end() {
        return timeOf(hours);
    }

    Instant timeOf(int hour) {
        return start.plus(Duration.ofHours(hour));
    }

    /** The hour that holds an instant; not held within the grid. */
    int hourOf(Instant instant) {
        return (int) Math.floorDiv(Duration.between(start, instant).toSeconds(), 3600L);
    }

    Window window(int from, int to) {
        return new Window(timeOf(from), timeOf(to));
    }

    /** First hour of the grid whose middle is at or after an instant; not held within the grid. */
    int firstMiddleFrom(Instant instant) {
        long seconds = Duration.between(start, instant).toSeconds() - 1800;
        return (int) Math.max(-1_000_000, Math.min(1_000_000, -Math.floorDiv(-seconds, 3600L)));
    }
}
