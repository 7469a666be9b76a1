package rainward.farm;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.Set;

/**
 * When the crew works.
 *
 * @param start of the day, local time
 * @param end of the day, local time, after the start
 * @param overtime may be added at the end of a day, at a price
 * @param days of the week that are worked; not empty
 * @param daylightOnly true where work stops at sunset and waits for sunrise
 */
public record CrewHours(
        LocalTime start,
        LocalTime end,
        Duration overtime,
        Set<DayOfWeek> days,
        boolean daylightOnly) {

    public CrewHours {
        days = Set.copyOf(days);
        Require.that(end.isAfter(start), "shift ends at " + end + ", not after its start " + start);
        Require.that(!overtime.isNegative(), "overtime is below zero");
        Require.that(!days.isEmpty(), "no day of the week is worked");
    }

    /** True where a local time lies in a shift, overtime apart. */
    public boolean hold(ZonedDateTime local) {
        LocalTime time = local.toLocalTime();
        return days.contains(local.getDayOfWeek()) && !time.isBefore(start) && time.isBefore(end);
    }
}
