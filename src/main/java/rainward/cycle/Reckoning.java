package rainward.cycle;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.cycle.ground.GroundMemory;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.weather.trace.Foreseen;

/**
 * Reckons soil and stands of the fields that wait.
 *
 * @param input of the round
 * @param memory of the ground
 */
record Reckoning(CycleInput input, GroundMemory memory) {

    /**
     * Every field that waits and can be reckoned.
     *
     * @param weather by property
     */
    List<FieldReckoning> fields(Map<String, Foreseen> weather) {
        // Fields do not touch each other, so both cores of an office PC reckon them at once.
        return input.fields().parallelStream()
                .filter(item -> item.status().waiting())
                .flatMap(item -> reckon(item, weather).stream())
                .toList();
    }

    /** Empty where the field's property has no forecast, or its recipe or mixes are unknown. */
    private Optional<FieldReckoning> reckon(FieldCase item, Map<String, Foreseen> weather) {
        Field field = item.field();
        if (input.roster().mixesOf(field).isEmpty()) {
            return Optional.empty();
        }
        return input.roster()
                .recipeOf(field)
                .flatMap(recipe -> Optional.ofNullable(weather.get(field.property()))
                        .map(ahead -> FieldReckoning.of(item, recipe, ahead, input, memory)));
    }
}
