package rainward.intake;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import rainward.farm.Roster;
import rainward.farm.SoilTexture;

/**
 * What a list of fields may refer to, and what holds where it does not tell.
 *
 * @param mixes by name
 * @param recipes by name
 * @param textures classes by name
 * @param slopeFraction of a field that does not tell
 */
public record KnownNames(
        Collection<String> mixes,
        Collection<String> recipes,
        Map<String, SoilTexture> textures,
        double slopeFraction) {

    public KnownNames {
        mixes = List.copyOf(mixes);
        recipes = List.copyOf(recipes);
        textures = Map.copyOf(textures);
    }

    /** Everything that a roster knows. */
    public static KnownNames of(
            Roster roster, Map<String, SoilTexture> textures, double slopeFraction) {
        return new KnownNames(
                roster.mixes().keySet(), roster.recipes().keySet(), textures, slopeFraction);
    }

    SortedSet<String> textureNames() {
        return new TreeSet<>(textures.keySet());
    }
}
