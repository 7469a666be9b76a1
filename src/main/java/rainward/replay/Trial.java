package rainward.replay;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.farm.Crew;
import rainward.farm.Field;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Person;
import rainward.farm.Require;
import rainward.farm.Roster;
import rainward.replay.crew.Policy;
import rainward.replay.crew.Scene;

/**
 * One thing that is otherwise, all else as it was: what it gains says where acres are lost, or what
 * a change on the farm would bring.
 */
public enum Trial {
    FORECAST("ten days of weather known without a fault", Policy.TOLD_THE_FUTURE, scene -> scene),
    SEASON("weather and stands known to the end", Policy.TOLD_THE_SEASON, scene -> scene),
    PLANNER("planner with ten times the tries", Policy.RAINWARD, scene -> scene),
    CAPACITY("every machine and person twice", Policy.RAINWARD, Trial::twice),
    TILLAGE("one more tillage tractor with a driver", Policy.RAINWARD, Trial::oneMoreTiller),
    EARLIER("start a week earlier", Policy.RAINWARD, scene -> scene),
    FARMS_TURNED("listed order, last farm first", Policy.AS_LISTED, Trial::farmsTurned);

    private static final int MORE_TRIES = 10;
    private static final int DAYS_EARLIER = 7;
    private static final String SECOND = ", the second";

    private final String words;
    private final Policy policy;
    private final UnaryOperator<Scene> change;

    Trial(String words, Policy policy, UnaryOperator<Scene> change) {
        Require.named("trial", words);
        this.words = words;
        this.policy = policy;
        this.change = change;
    }

    public String words() {
        return words;
    }

    /** The policy that it is tried with. */
    public Policy policy() {
        return policy;
    }

    /** The policy that it is held against, as things are. */
    public Policy against() {
        return policy == Policy.AS_LISTED ? Policy.AS_LISTED : Policy.RAINWARD;
    }

    /** True where the season's runs by policy tell it already. */
    public boolean isPolicy() {
        return this == FORECAST || this == SEASON;
    }

    /** Crew and fields as they are then. */
    Scene scene(Scene scene) {
        return change.apply(scene);
    }

    long tries(long tries) {
        return this == PLANNER ? MORE_TRIES * tries : tries;
    }

    /** Days by which the season begins earlier. */
    int daysEarlier() {
        return this == EARLIER ? DAYS_EARLIER : 0;
    }

    private static Scene crew(Scene scene, List<Person> people, List<Machine> machines) {
        Roster roster = scene.roster();
        Crew crew = roster.crew();
        return new Scene(
                Roster.of(
                        List.copyOf(roster.properties().values()),
                        List.copyOf(roster.mixes().values()),
                        List.copyOf(roster.recipes().values()),
                        crew.with(people, machines)),
                scene.fields(),
                scene.rules());
    }

    private static Scene twice(Scene scene) {
        Crew crew = scene.roster().crew();
        return crew(
                scene,
                crew.people().stream()
                        .map(Trial::onBoth)
                        .flatMap(p -> Stream.of(
                                p, new Person(p.name() + SECOND, p.machines(), p.absences())))
                        .toList(),
                crew.machines().stream().flatMap(m -> Stream.of(m, second(m))).toList());
    }

    private static Person onBoth(Person one) {
        Set<String> both = one.machines().stream()
                .flatMap(m -> Stream.of(m, m + SECOND))
                .collect(Collectors.toSet());
        return new Person(one.name(), both, one.absences());
    }

    private static Machine second(Machine one) {
        return one.named(one.name() + SECOND);
    }

    private static Scene oneMoreTiller(Scene scene) {
        Crew crew = scene.roster().crew();
        Machine tiller = crew.machines().stream()
                .filter(m -> m.operations().contains(Operation.TILL))
                .findFirst()
                .map(Trial::second)
                .orElseThrow(() -> new IllegalArgumentException("no machine tills"));
        Person driver = new Person("one more driver", Set.of(tiller.name()), List.of());
        return crew(
                scene,
                Stream.concat(crew.people().stream(), Stream.of(driver)).toList(),
                Stream.concat(crew.machines().stream(), Stream.of(tiller)).toList());
    }

    private static Scene farmsTurned(Scene scene) {
        List<String> farms = new ArrayList<>(
                scene.fields().stream().map(Field::property).distinct().toList());
        Collections.reverse(farms);
        return new Scene(
                scene.roster(),
                farms.stream()
                        .flatMap(farm ->
                                scene.fields().stream().filter(f -> f.property().equals(farm)))
                        .toList(),
                scene.rules());
    }
}
