package rainward.input.seed;

import rainward.farm.Mix;
import rainward.farm.Require;
import rainward.farm.SeedingMethod;

/**
 * What is to be sown where.
 *
 * @param field its name
 * @param areaHa to be sown [ha]
 * @param mix what goes in
 * @param method how it is put down
 */
public record Sowing(String field, double areaHa, Mix mix, SeedingMethod method) {

    public Sowing {
        Require.named("field", field);
        Require.positive("areaHa", areaHa);
    }
}
