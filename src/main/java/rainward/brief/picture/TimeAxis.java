package rainward.brief.picture;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import rainward.farm.Window;

/** Time from left to right across a picture. */
final class TimeAxis {

    private static final double LETTERS = 9.5;

    private final Window span;
    private final ZoneId zone;
    private final double left;
    private final double right;

    /**
     * An axis.
     *
     * @param span that is shown
     * @param zone of the farm, for the days
     * @param left edge of the span
     * @param right edge of the span
     */
    TimeAxis(Window span, ZoneId zone, double left, double right) {
        this.span = span;
        this.zone = zone;
        this.left = left;
        this.right = right;
    }

    Window span() {
        return span;
    }

    double left() {
        return left;
    }

    double right() {
        return right;
    }

    double x(Instant at) {
        double share = Duration.between(span.from(), at).toMillis()
                / (double) span.length().toMillis();
        return left + share * (right - left);
    }

    /** A line at each midnight from top to base, and the days' names where there is room. */
    void draw(Canvas canvas, double top, double base, double namesY) {
        LocalDate last = span.to().atZone(zone).toLocalDate();
        LocalDate date = span.from().atZone(zone).toLocalDate();
        for (; !date.isAfter(last); date = date.plusDays(1)) {
            double from = Math.max(left, x(date.atStartOfDay(zone).toInstant()));
            double to = Math.min(right, x(date.plusDays(1).atStartOfDay(zone).toInstant()));
            if (from > left) {
                canvas.line(from, top, from, base, Ink.FAINT);
            }
            String name = DateTimeFormatter.ofPattern("EEE", Locale.US).format(date);
            if (to - from > canvas.width(name, LETTERS)) {
                canvas.textAround(name, LETTERS, (from + to) / 2, namesY);
            }
        }
    }
}
