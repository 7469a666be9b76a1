package rainward.daemon.word;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import rainward.daemon.office.Refusal;

/** Times as people write them. */
public final class Moments {

    private Moments() {}

    /** A local time of today, or of the day that is given with it. */
    public static Instant of(String text, LocalDate today, ZoneId zone) {
        try {
            String plain = text.strip().replace('T', ' ');
            LocalDateTime local = plain.length() <= 5
                    ? today.atTime(LocalTime.parse(plain))
                    : plain.length() <= 10
                            ? LocalDate.parse(plain).atTime(LocalTime.NOON)
                            : LocalDateTime.parse(plain.replace(' ', 'T'));
            return local.atZone(zone).toInstant();
        } catch (DateTimeException e) {
            throw Refusal.badInput("'" + text + "' is no time: write 14:30, 2026-07-14 or"
                    + " \"2026-07-14 14:30\", local time.");
        }
    }

    /** The same, or now where nothing is said. */
    static Instant of(Optional<String> text, ZonedDateTime now) {
        return text.map(t -> of(t, now.toLocalDate(), now.getZone())).orElse(now.toInstant());
    }
}
