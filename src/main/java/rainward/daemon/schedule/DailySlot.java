package rainward.daemon.schedule;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;

/**
 * A local time of day that comes once a day, also in the nights when clocks change: a time that is
 * skipped comes at the end of the gap, one that comes twice counts at its first coming.
 *
 * @param time local time
 * @param zone of the farm's days
 */
public record DailySlot(LocalTime time, ZoneId zone) {

    /** The day's instant. */
    public Instant on(LocalDate day) {
        return day.atTime(time).atZone(zone).toInstant();
    }

    /** The farm's day whose slot came last, at or before an instant. */
    public LocalDate latestDay(Instant now) {
        LocalDate today = LocalDate.ofInstant(now, zone);
        return on(today).isAfter(now) ? today.minusDays(1) : today;
    }
}
