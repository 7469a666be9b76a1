package rainward.queue.problem;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.farm.Machine;
import rainward.farm.Operation;

/**
 * How a field empties machines, where its rates are known.
 *
 * @param known by operation, then by name of the machine; no entry: the machine is filled by the
 *     ground that it works
 */
public record Fillings(Map<Operation, Map<String, Filling>> known) {

    /** Nothing is known. */
    public static final Fillings NONE = new Fillings(Map.of());

    public Fillings {
        known = known.entrySet().stream()
                .collect(Collectors.toUnmodifiableMap(
                        Map.Entry::getKey, e -> Map.copyOf(e.getValue())));
    }

    /** The same beside another machine that is like a known one. */
    public Fillings alsoOf(String machine, String added) {
        Map<Operation, Map<String, Filling>> more = new HashMap<>();
        known.forEach((operation, machines) -> {
            Map<String, Filling> all = new HashMap<>(machines);
            Optional.ofNullable(machines.get(machine)).ifPresent(f -> all.put(added, f));
            more.put(operation, all);
        });
        return new Fillings(more);
    }

    /** For a machine at an operation, if it is known. */
    public Optional<Filling> of(Machine machine, Operation operation) {
        return Optional.ofNullable(known.get(operation))
                .flatMap(machines -> Optional.ofNullable(machines.get(machine.name())));
    }
}
