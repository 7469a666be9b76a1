package rainward.farm;

import java.time.ZoneId;
import java.util.List;

/**
 * Who and what there is to work with.
 *
 * @param zone of the farm's days
 * @param hours of work
 * @param people who can run machines
 * @param machines they run
 * @param roadFactor road length over straight distance, 1 to 3
 */
public record Crew(
        ZoneId zone,
        CrewHours hours,
        List<Person> people,
        List<Machine> machines,
        double roadFactor) {

    public Crew {
        people = List.copyOf(people);
        machines = List.copyOf(machines);
        Require.inRange("roadFactor", roadFactor, 1, 3);
    }
}
