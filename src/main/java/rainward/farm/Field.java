package rainward.farm;

import java.util.List;

/**
 * A field as it lies: what does not change through the season.
 *
 * @param name unique over all properties
 * @param property the property it belongs to
 * @param place a point inside it
 * @param areaHa area to be seeded [ha]
 * @param ground soil and slope
 * @param wish what the person wants there
 */
public record Field(
        String name, String property, GeoPoint place, double areaHa, Ground ground, Wish wish) {

    public Field {
        Require.named("field name", name);
        Require.named("property", property);
        Require.positive("areaHa", areaHa);
    }

    /**
     * What the field is made of.
     *
     * @param texture of the plough layer
     * @param slopeFraction rise over run, 0 to 0.6
     */
    public record Ground(SoilTexture texture, double slopeFraction) {

        public Ground {
            Require.inRange("slopeFraction", slopeFraction, 0, 0.6);
        }
    }

    /**
     * What the person wants there.
     *
     * @param mixes the mix wanted first, then the fall-backs in order of wish; not empty
     * @param recipe chain of stages, by name
     * @param priority weight of a hectare here against one elsewhere, 1 is usual
     */
    public record Wish(List<String> mixes, String recipe, double priority) {

        public Wish {
            mixes = List.copyOf(mixes);
            Require.that(!mixes.isEmpty(), "a field needs at least one mix");
            Require.named("recipe", recipe);
            Require.inRange("priority", priority, 0.01, 100);
        }
    }
}
