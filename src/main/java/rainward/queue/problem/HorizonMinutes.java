package rainward.queue.problem;

import java.time.Duration;
import java.time.Instant;
import rainward.farm.Window;

/**
 * Instants as whole minutes from the start of the horizon, and back.
 *
 * @param from start of the horizon
 * @param end its length [min]
 */
public record HorizonMinutes(Instant from, int end) {

    public static HorizonMinutes of(Window horizon) {
        return new HorizonMinutes(horizon.from(), (int) horizon.length().toMinutes());
    }

    /** First full minute that is not before the instant; may lie outside the horizon. */
    public int notBefore(Instant instant) {
        long seconds = Duration.between(from, instant).plusNanos(999_999_999).getSeconds();
        return clip(-Math.floorDiv(-seconds, 60L));
    }

    /** Last full minute that is not after the instant; may lie outside the horizon. */
    public int notAfter(Instant instant) {
        return clip(Math.floorDiv(Duration.between(from, instant).getSeconds(), 60L));
    }

    private static int clip(long minutes) {
        return (int) Math.max(-1_000_000_000, Math.min(1_000_000_000, minutes));
    }

    public Instant at(int minute) {
        return from.plus(Duration.ofMinutes(minute));
    }

    public Window window(int start, int finish) {
        return new Window(at(start), at(finish));
    }

    /** A length in full minutes, rounded up. */
    public static int length(Duration duration) {
        return clip(-Math.floorDiv(-duration.getSeconds(), 60L));
    }
}
