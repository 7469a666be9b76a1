package rainward.input.record;

import java.time.LocalDate;
import rainward.farm.Require;

/**
 * A crop that was carried off a field.
 *
 * @param crop and part, as in {@code crop-removal.csv}
 * @param on day of the harvest
 * @param yieldKgPerHa as sold [kg/ha]
 */
public record Harvested(String crop, LocalDate on, double yieldKgPerHa) {

    public Harvested {
        Require.named("crop", crop);
        Require.notNegative("yieldKgPerHa", yieldKgPerHa);
    }
}
