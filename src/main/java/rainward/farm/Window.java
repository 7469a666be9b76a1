package rainward.farm;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * A half-open stretch of time {@code [from, to)}.
 *
 * @param from first instant inside
 * @param to first instant after; not before {@code from}
 */
public record Window(Instant from, Instant to) {

    public Window {
        Require.that(
                !to.isBefore(from), () -> "window ends at " + to + ", before it starts at " + from);
    }

    /** A day of a zone: 23, 24 or 25 hours. */
    public static Window ofDay(LocalDate day, ZoneId zone) {
        return ofDays(day, day, zone);
    }

    /** Days of a zone, both included. */
    public static Window ofDays(LocalDate first, LocalDate last, ZoneId zone) {
        return new Window(
                first.atStartOfDay(zone).toInstant(),
                last.plusDays(1).atStartOfDay(zone).toInstant());
    }

    public Duration length() {
        return Duration.between(from, to);
    }

    public boolean contains(Instant instant) {
        return !instant.isBefore(from) && instant.isBefore(to);
    }

    public boolean overlaps(Window other) {
        return from.isBefore(other.to) && other.from.isBefore(to);
    }

    /** Hours that both stretches share; zero where they do not meet [h]. */
    public double sharedHours(Window other) {
        Instant start = from.isAfter(other.from) ? from : other.from;
        Instant end = to.isBefore(other.to) ? to : other.to;
        return Math.max(0, Duration.between(start, end).toMillis() / 3_600_000.0);
    }
}
