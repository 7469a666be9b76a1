package rainward.cycle;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.cycle.ground.GroundMemory;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.weather.trace.Traces;

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
     * @param traces of the weather by property
     */
    List<FieldReckoning> fields(Map<String, Traces> traces) {
        // Fields do not touch each other, so both cores of an office PC reckon them at once.
        return input.fields().parallelStream()
                .filter(item -> item.status().waiting())
                .flatMap(item -> reckon(item, traces).stream())
                .toList();
    }

    /** Empty where the field's property has no forecast, or its recipe or mixes are unknown. */
    private Optional<FieldReckoning> reckon(FieldCase item, Map<String, Traces> traces) {
        Field field = item.field();
        if (input.roster().mixesOf(field).isEmpty()) {
            return Optional.empty();
        }
        return input.roster()
                .recipeOf(field)
                .flatMap(recipe -> Optional.ofNullable(traces.get(field.property()))
                        .map(ahead -> FieldReckoning.of(item, recipe, ahead, input, memory)));
    }
}
