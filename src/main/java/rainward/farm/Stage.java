package rainward.farm;

import java.time.Duration;
import java.util.Optional;

/**
 * One step of a recipe.
 *
 * @param name what the crew calls it; unique within the recipe
 * @param operation what a machine must be able to do
 * @param leastWait from the end of the stage before to the start of this one, at least
 * @param greatestWait at most that long, else the stage before has to be done again; empty: no
 *     limit
 * @param limits weather and soil that stop it
 */
public record Stage(
        String name,
        Operation operation,
        Duration leastWait,
        Optional<Duration> greatestWait,
        StageLimits limits) {

    public Stage {
        Require.named("stage name", name);
        Require.that(!leastWait.isNegative(), name + ": least wait is below zero");
        greatestWait.ifPresent(most -> Require.that(
                most.compareTo(leastWait) >= 0,
                name + ": greatest wait " + most + " is below least " + leastWait));
    }
}
