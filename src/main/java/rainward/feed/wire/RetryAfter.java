package rainward.feed.wire;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/** The Retry-After header (RFC 9110, 10.2.3), seconds or a date, never more than a day. */
public final class RetryAfter {

    static final Duration LONGEST = Duration.ofHours(24);

    private RetryAfter() {}

    /**
     * Reads the header.
     *
     * @param value as sent
     * @param asOf now
     * @return wait, 0 to 24 h; empty where the value means nothing
     */
    static Optional<Duration> parse(String value, Instant asOf) {
        String text = value.strip();
        if (text.matches("-\\d+")) {
            return Optional.of(Duration.ZERO);
        }
        if (text.matches("\\d+")) {
            return Optional.of(text.length() > 6 ? LONGEST : clamp(Long.parseLong(text)));
        }
        return date(text).map(at -> clamp(Duration.between(asOf, at).toSeconds()));
    }

    /** An HTTP date (RFC 9110, 5.6.7). */
    public static Optional<Instant> date(String text) {
        try {
            return Optional.of(
                    ZonedDateTime.parse(text.strip(), DateTimeFormatter.RFC_1123_DATE_TIME)
                            .toInstant());
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private static Duration clamp(long seconds) {
        return Duration.ofSeconds(Math.max(0, Math.min(LONGEST.toSeconds(), seconds)));
    }
}
