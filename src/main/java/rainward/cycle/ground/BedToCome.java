package rainward.cycle.ground;

import rainward.farm.Field;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.SeedingMethod;
import rainward.stand.SeedingConditions;

/**
 * The bed that a recipe makes for the seed.
 *
 * @param method that puts seed in
 * @param conditions that it lies under
 */
public record BedToCome(SeedingMethod method, SeedingConditions conditions) {

    /** The bed of a field. */
    public static BedToCome of(Field field, Recipe recipe) {
        SeedingMethod method = recipe.seeding().limits().method().orElse(SeedingMethod.DRILLED);
        return new BedToCome(
                method,
                new SeedingConditions(
                        method,
                        field.ground().texture(),
                        field.ground().slopeFraction(),
                        firmed(recipe, method),
                        0));
    }

    private static boolean firmed(Recipe recipe, SeedingMethod method) {
        return method == SeedingMethod.ROLLED
                || recipe.stages().stream().anyMatch(s -> s.operation() == Operation.FIRM);
    }
}
