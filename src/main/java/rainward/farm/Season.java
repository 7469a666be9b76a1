package rainward.farm;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.temporal.ChronoUnit;

/**
 * When a mix may be sown, and what a stand is worth by the day it comes up: full worth to
 * {@code fullWorthUntil}, falling in a straight line to {@code lateWorthFraction} at
 * {@code lastEmergence}, nothing after.
 *
 * @param firstSowing first day that seed goes in, inclusive
 * @param lastSowing last day that seed goes in, inclusive
 * @param fullWorthUntil last emergence day of full worth, inclusive
 * @param lastEmergence last emergence day of any worth, inclusive
 * @param fullWorth what a timely stand is worth against the best mix, 0 to 1
 * @param lateWorthFraction share of full worth on the last emergence day, 0 to 1
 */
public record Season(
        MonthDay firstSowing,
        MonthDay lastSowing,
        MonthDay fullWorthUntil,
        MonthDay lastEmergence,
        double fullWorth,
        double lateWorthFraction) {

    public Season {
        Require.that(!lastSowing.isBefore(firstSowing), "season: last sowing is before first");
        Require.that(
                !lastEmergence.isBefore(fullWorthUntil),
                "season: last emergence is before the end of full worth");
        Require.inRange("fullWorth", fullWorth, 0, 1);
        Require.inRange("lateWorthFraction", lateWorthFraction, 0, 1);
    }

    /** True where seed may go in on that day. */
    public boolean allowsSowing(LocalDate day) {
        MonthDay date = MonthDay.from(day);
        return !date.isBefore(firstSowing) && !date.isAfter(lastSowing);
    }

    /**
     * Worth of a stand that comes up on a day.
     *
     * @param emergence the farm's calendar day
     * @return 0 to {@code fullWorth}
     */
    public double worthOn(LocalDate emergence) {
        LocalDate full = fullWorthUntil.atYear(emergence.getYear());
        LocalDate last = lastEmergence.atYear(emergence.getYear());
        if (!emergence.isAfter(full)) {
            return fullWorth;
        }
        if (emergence.isAfter(last)) {
            return 0;
        }
        double late = ChronoUnit.DAYS.between(full, emergence);
        double share = late / ChronoUnit.DAYS.between(full, last);
        return fullWorth * (1 - share * (1 - lateWorthFraction));
    }
}
