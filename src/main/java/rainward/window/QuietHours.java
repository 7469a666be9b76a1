package rainward.window;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.Optional;

/**
 * Hours of the day in which people are left in peace; they may go over midnight.
 *
 * @param from local time at which quiet begins
 * @param to local time at which it ends; the same as {@code from}: never quiet
 */
public record QuietHours(LocalTime from, LocalTime to) {

    /** No quiet at all. */
    public static final QuietHours NEVER = new QuietHours(LocalTime.MIDNIGHT, LocalTime.MIDNIGHT);

    /** End of the quiet that goes on at a moment; empty where none does. */
    public Optional<Instant> endAt(ZonedDateTime local) {
        LocalTime time = local.toLocalTime();
        boolean overNight = to.isBefore(from);
        boolean quiet = overNight
                ? !time.isBefore(from) || time.isBefore(to)
                : !time.isBefore(from) && time.isBefore(to);
        if (!quiet) {
            return Optional.empty();
        }
        boolean tomorrow = overNight && !time.isBefore(from);
        LocalDate day = local.toLocalDate().plusDays(tomorrow ? 1 : 0);
        return Optional.of(day.atTime(to).atZone(local.getZone()).toInstant());
    }
}
