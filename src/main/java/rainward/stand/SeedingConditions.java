package rainward.stand;

import rainward.farm.Require;
import rainward.farm.SeedingMethod;
import rainward.farm.SoilTexture;

/**
 * How seed goes in, and into what ground.
 *
 * @param method of putting it down
 * @param texture of the top
 * @param slopeFraction rise over run, 0 to 0.6
 * @param firmed true where the seedbed was rolled or settled by rain
 * @param residueCoverFraction share of the ground under straw or dead plants, 0 to 1
 */
public record SeedingConditions(
        SeedingMethod method,
        SoilTexture texture,
        double slopeFraction,
        boolean firmed,
        double residueCoverFraction) {

    public SeedingConditions {
        Require.inRange("slopeFraction", slopeFraction, 0, 0.6);
        Require.inRange("residueCoverFraction", residueCoverFraction, 0, 1);
    }
}
