package rainward.feed.reading;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import rainward.farm.Window;

/** Times and intervals of ISO 8601 as the US service writes them. */
public final class Spans {

    private static final Duration LONGEST = Duration.ofDays(31);
    private static final Pattern WEEKS = Pattern.compile("P\\d{1,2}W");
    private static final DateTimeFormatter TIME = new DateTimeFormatterBuilder()
            .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
            .appendPattern("[XXX][XX][X]")
            .toFormatter(Locale.ROOT)
            .withResolverStyle(ResolverStyle.STRICT);

    private Spans() {}

    /** A time with its offset from UTC; a time without one is not a time. */
    public static Optional<Instant> time(String text) {
        // Durations come here by the thousand; failing to parse one is slow.
        if (text.isBlank() || text.strip().charAt(0) == 'P') {
            return Optional.empty();
        }
        try {
            return Optional.of(OffsetDateTime.parse(text.strip(), TIME).toInstant());
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /**
     * {@code start/duration}, {@code start/end}, {@code duration/end}; {@code NOW} for a start.
     *
     * @param text as written
     * @param now what NOW means
     * @return the interval; empty where it is none, or ends before it starts, or is over a month
     */
    public static Optional<Window> interval(String text, Instant now) {
        String[] halves = text.split("/", -1);
        if (halves.length != 2) {
            return Optional.empty();
        }
        Optional<Duration> before = duration(halves[0]);
        Optional<Duration> after = duration(halves[1]);
        Optional<Instant> start =
                halves[0].strip().equals("NOW") ? Optional.of(now) : time(halves[0]);
        Optional<Instant> end = time(halves[1]);
        Optional<Instant> from = start.or(() -> end.flatMap(e -> before.map(e::minus)));
        Optional<Instant> to = end.or(() -> start.flatMap(s -> after.map(s::plus)));
        return from.flatMap(f -> to.flatMap(t -> between(f, t)));
    }

    private static Optional<Window> between(Instant from, Instant to) {
        boolean sound = from.isBefore(to) && Duration.between(from, to).compareTo(LONGEST) <= 0;
        return sound ? Optional.of(new Window(from, to)) : Optional.empty();
    }

    /** Hours and days of fixed length, up to a month; months and years are not of fixed length. */
    static Optional<Duration> duration(String text) {
        String iso = text.strip();
        if (WEEKS.matcher(iso).matches()) {
            return Optional.of(
                    Duration.ofDays(7L * Integer.parseInt(iso.substring(1, iso.length() - 1))));
        }
        try {
            return iso.startsWith("P")
                    ? Optional.of(Duration.parse(iso)).filter(d -> d.abs().compareTo(LONGEST) <= 0)
                    : Optional.empty();
        } catch (DateTimeException | ArithmeticException e) {
            return Optional.empty();
        }
    }
}
