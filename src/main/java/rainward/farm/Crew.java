package rainward.farm;

import java.time.ZoneId;
import java.util.List;

/**
 * Who and what there is to work with.
 *
 * @param clock days and times as the crew says them
 * @param hours of work
 * @param people who can run machines
 * @param machines they run
 * @param roadFactor road length over straight distance, 1 to 3
 */
public record Crew(
        DayClock clock,
        CrewHours hours,
        List<Person> people,
        List<Machine> machines,
        double roadFactor) {

    public Crew {
        people = List.copyOf(people);
        machines = List.copyOf(machines);
        Require.inRange("roadFactor", roadFactor, 1, 3);
    }

    /** The zone of the farm's days. */
    public ZoneId zone() {
        return clock.zone();
    }

    /** The same hours with other people and machines. */
    public Crew with(List<Person> others, List<Machine> otherMachines) {
        return new Crew(clock, hours, others, otherMachines, roadFactor);
    }
}
