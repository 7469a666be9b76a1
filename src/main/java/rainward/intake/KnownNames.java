package rainward.intake;

import java.util.Collection;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import rainward.farm.Roster;

/**
 * What a list of fields may refer to, and what holds where it does not tell.
 *
 * @param mixes by name
 * @param recipes by name
 * @param textures classes of soil
 * @param usual where a field does not tell
 */
public record KnownNames(
        Collection<String> mixes,
        Collection<String> recipes,
        TextureClasses textures,
        UsualGround usual) {

    public KnownNames {
        mixes = List.copyOf(mixes);
        recipes = List.copyOf(recipes);
    }

    /** Everything that a roster knows. */
    public static KnownNames of(Roster roster, TextureClasses textures, UsualGround usual) {
        return new KnownNames(roster.mixes().keySet(), roster.recipes().keySet(), textures, usual);
    }

    SortedSet<String> textureNames() {
        return new TreeSet<>(textures.byName().keySet());
    }

    /**
     * Ground of a field that does not tell.
     *
     * @param organicMatterPct of the plough layer [weight %]
     * @param slopeFraction rise over run
     */
    public record UsualGround(double organicMatterPct, double slopeFraction) {}
}
