package rainward.farm;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The chain of stages that takes a field from stubble to seed, in order.
 *
 * @param name what the crew calls it
 * @param stages in the order they are done; exactly one of them seeds
 */
public record Recipe(String name, List<Stage> stages) {

    public Recipe {
        Require.named("recipe name", name);
        stages = List.copyOf(stages);
        Set<String> names = new HashSet<>();
        stages.forEach(s -> Require.that(names.add(s.name()), name + ": stage twice: " + s.name()));
        long seeding =
                stages.stream().filter(s -> s.operation() == Operation.SEED).count();
        Require.that(seeding == 1, name + ": has " + seeding + " seeding stages, must have one");
    }

    /** The stage that puts the seed in. */
    public Stage seeding() {
        return stages.stream()
                .filter(s -> s.operation() == Operation.SEED)
                .findFirst()
                .orElseThrow();
    }
}
