package rainward.feed.recorded;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Puts times back into recordings in which they were replaced by {@code date:now} and an offset.
 * The earliest one comes to lie on the first time that was left in the recording, else on a full
 * hour.
 */
final class TimeTemplate {

    private static final Pattern MARK = Pattern.compile(
            "date:now(?:\\s*([+-]?)\\s*(\\d{1,9})\\s*(second|minute|hour|day)s?)?(\\s*/\\s*)?");
    private static final Pattern LITERAL =
            Pattern.compile("\"(\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}[+-]\\d{2}:\\d{2})/");
    private static final Instant ANY_DAY = Instant.parse("2026-07-15T12:00:00Z");
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ssxxx").withZone(ZoneOffset.UTC);

    private TimeTemplate() {}

    /** The text with real times; unchanged where it holds no mark. */
    static String restored(String text) {
        Matcher marks = MARK.matcher(text);
        Optional<Duration> earliest =
                marks.results().map(TimeTemplate::offset).min(Duration::compareTo);
        if (earliest.isEmpty()) {
            return text;
        }
        Instant now = first(text).minus(earliest.get());
        return MARK.matcher(text).replaceAll(mark -> {
            Instant at = now.plus(offset(mark)).plusSeconds(30);
            String slash = mark.group(4) == null ? "" : "/";
            return TIME.format(at.truncatedTo(ChronoUnit.MINUTES)) + slash;
        });
    }

    private static Instant first(String text) {
        Matcher literal = LITERAL.matcher(text);
        return literal.find() ? OffsetDateTime.parse(literal.group(1)).toInstant() : ANY_DAY;
    }

    private static Duration offset(MatchResult mark) {
        if (mark.group(2) == null) {
            return Duration.ZERO;
        }
        long amount = Long.parseLong(mark.group(2)) * ("-".equals(mark.group(1)) ? -1 : 1);
        return switch (mark.group(3)) {
            case "minute" -> Duration.ofMinutes(amount);
            case "hour" -> Duration.ofHours(amount);
            case "day" -> Duration.ofDays(amount);
            default -> Duration.ofSeconds(amount);
        };
    }
}
