package rainward.daemon.word;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rainward.daemon.office.Refusal;

/** Times as people write them. */
public final class Moments {

    private static final Pattern TWELVE_HOURS = Pattern.compile(
            "(.*?)\\b(\\d{1,2})(?::(\\d\\d))?\\s*([ap])\\.?m\\.?", Pattern.CASE_INSENSITIVE);

    private Moments() {}

    /** A local time of today, or of the day that is given with it. */
    public static Instant of(String text, LocalDate today, ZoneId zone) {
        try {
            String plain = twentyFour(text.strip()).replace('T', ' ');
            LocalDateTime local = plain.length() <= 5
                    ? today.atTime(LocalTime.parse(plain))
                    : plain.length() <= 10
                            ? LocalDate.parse(plain).atTime(LocalTime.NOON)
                            : LocalDateTime.parse(plain.replace(' ', 'T'));
            return local.atZone(zone).toInstant();
        } catch (DateTimeException e) {
            throw Refusal.badInput("'" + text + "' is no time: write 14:30 or 2:30 pm, 2026-07-14"
                    + " or \"2026-07-14 14:30\", local time.");
        }
    }

    /** For instance 19:30 for 7:30 pm; what is written otherwise stays. */
    private static String twentyFour(String text) {
        Matcher parts = TWELVE_HOURS.matcher(text);
        if (!parts.matches()) {
            return text;
        }
        int hour = Integer.parseInt(parts.group(2));
        if (hour < 1 || hour > 12) {
            return text;
        }
        boolean afternoon = parts.group(4).equalsIgnoreCase("p");
        String minute = Optional.ofNullable(parts.group(3)).orElse("00");
        return String.format(
                Locale.ROOT, "%s%02d:%s", parts.group(1), hour % 12 + (afternoon ? 12 : 0), minute);
    }

    /** The same, or now where nothing is said. */
    static Instant of(Optional<String> text, ZonedDateTime now) {
        return text.map(t -> of(t, now.toLocalDate(), now.getZone())).orElse(now.toInstant());
    }
}
