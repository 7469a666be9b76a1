package rainward.board.picture;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rainward.farm.DayClock;
import rainward.farm.Window;

/**
 * Time along the width of a drawing.
 *
 * @param span what is drawn
 * @param zone of the ticks
 */
public record TimeScale(Window span, ZoneId zone) {

    /**
     * A line with words below.
     *
     * @param x place along the width [%]
     * @param label its words
     */
    public record Tick(String x, String label) {}

    /** Place of a moment along the width, 0 to 100; what lies outside is put at the edge. */
    public double percentOf(Instant at) {
        double share = (double) Duration.between(span.from(), at).toSeconds()
                / span.length().toSeconds();
        return 100 * Math.min(1, Math.max(0, share));
    }

    /** The same as a drawing wants it. */
    public String x(Instant at) {
        return percent(percentOf(at));
    }

    public String width(Window part) {
        return percent(percentOf(part.to()) - percentOf(part.from()));
    }

    static String percent(double percent) {
        return String.format(Locale.ROOT, "%.2f%%", percent);
    }

    /** Every so many hours of the day, from the first that is inside. */
    public List<Tick> hours(int every, DayClock clock) {
        List<Tick> ticks = new ArrayList<>();
        ZonedDateTime at =
                span.from().atZone(zone).truncatedTo(java.time.temporal.ChronoUnit.HOURS);
        while (at.toInstant().isBefore(span.to())) {
            if (at.getHour() % every == 0 && !at.toInstant().isBefore(span.from())) {
                ticks.add(new Tick(x(at.toInstant()), clock.time(at.toInstant())));
            }
            at = at.plusHours(1);
        }
        return ticks;
    }

    /** Every midnight. */
    public List<Tick> days(DayClock clock) {
        List<Tick> ticks = new ArrayList<>();
        ZonedDateTime at = span.from().atZone(zone).toLocalDate().atStartOfDay(zone);
        for (; at.toInstant().isBefore(span.to()); at = at.plusDays(1)) {
            if (!at.toInstant().isBefore(span.from())) {
                ticks.add(new Tick(x(at.toInstant()), clock.weekday(at.toInstant())));
            }
        }
        return ticks;
    }
}
