package rainward.daemon.schedule;

import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;

/** What can be due: a sealed choice between a daily time and a steady interval. */
public sealed interface Job {

    /** Unique name; the key of the job in the schedule's file and in the log of what was done. */
    String name();

    /**
     * Once a day. If the slot is missed, the work runs once as soon as it can.
     *
     * @param name unique
     * @param time local time
     * @param zone of the farm's days
     */
    record Daily(String name, LocalTime time, ZoneId zone) implements Job {}

    /**
     * Again and again. Missed turns are not made up: one run follows as soon as it can, then the
     * interval goes on.
     *
     * @param name unique
     * @param interval from one start to the next
     */
    record Steady(String name, Duration interval) implements Job {}
}
