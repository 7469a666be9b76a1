package rainward.farm;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Everything that is known by name: what fields, crews and plans refer to.
 *
 * @param properties by name
 * @param mixes by name
 * @param recipes by name
 * @param crew who works
 */
public record Roster(
        Map<String, Property> properties,
        Map<String, Mix> mixes,
        Map<String, Recipe> recipes,
        Crew crew) {

    public Roster {
        properties = Map.copyOf(properties);
        mixes = Map.copyOf(mixes);
        recipes = Map.copyOf(recipes);
    }

    /** Builds the maps from lists. */
    public static Roster of(
            List<Property> properties, List<Mix> mixes, List<Recipe> recipes, Crew crew) {
        return new Roster(
                byName(properties, Property::name),
                byName(mixes, Mix::name),
                byName(recipes, Recipe::name),
                crew);
    }

    private static <T> Map<String, T> byName(List<T> all, Function<T, String> name) {
        return all.stream().collect(Collectors.toUnmodifiableMap(name, Function.identity()));
    }

    /** The mixes of a field that are known, the wanted one first. */
    public List<Mix> mixesOf(Field field) {
        return field.wish().mixes().stream()
                .map(name -> Optional.ofNullable(mixes.get(name)))
                .flatMap(Optional::stream)
                .toList();
    }

    /**
     * When the seed of a seeded field went in: seed lies from its own stage on, not from the
     * rolling or spraying after it. Where that stage is not on record, its last stage tells.
     */
    public Optional<Instant> sownAt(FieldCase item) {
        return item.status()
                .seededAt()
                .map(last -> recipeOf(item.field())
                        .flatMap(recipe -> item.status().of(recipe.seeding().name()))
                        .flatMap(StageRecord::finishedAt)
                        .orElse(last));
    }

    /** Where machines arrive: at the property's place, or else at the field's own. */
    public GeoPoint arrivalAt(Field field) {
        return Optional.ofNullable(properties.get(field.property()))
                .map(Property::place)
                .orElse(field.place());
    }

    /** The recipe of a field, if it is known. */
    public Optional<Recipe> recipeOf(Field field) {
        return Optional.ofNullable(recipes.get(field.wish().recipe()));
    }
}
