package rainward.input.seeder;

import rainward.farm.Mix;
import rainward.farm.Require;

/**
 * What the meters feel of a mix: its largest seed.
 *
 * @param mix its name
 * @param largestSeedsPerKg count of the largest seed in it [1/kg]
 */
public record SeedSize(String mix, double largestSeedsPerKg) {

    public SeedSize {
        Require.named("mix", mix);
        Require.positive("largestSeedsPerKg", largestSeedsPerKg);
    }

    public static SeedSize of(Mix mix) {
        return new SeedSize(
                mix.name(),
                mix.components().stream()
                        .mapToDouble(part -> part.species().seedsPerKg())
                        .min()
                        .orElseThrow());
    }

    /** How far two seeds are apart: natural logarithm of the ratio of their weights, 0 and more. */
    double apart(SeedSize other) {
        return Math.abs(Math.log(largestSeedsPerKg / other.largestSeedsPerKg));
    }
}
