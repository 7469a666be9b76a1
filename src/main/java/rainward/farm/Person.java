package rainward.farm;

import java.util.List;
import java.util.Set;

/**
 * Somebody who works.
 *
 * @param name what the crew calls them
 * @param machines names of the machines they can run; empty: all
 * @param absences when they are away
 */
public record Person(String name, Set<String> machines, List<Window> absences) {

    public Person {
        Require.named("person name", name);
        machines = Set.copyOf(machines);
        absences = List.copyOf(absences);
    }

    public boolean canRun(String machine) {
        return machines.isEmpty() || machines.contains(machine);
    }
}
