package rainward.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Texture classes of the USDA triangle, from {@code shared/soils.csv}.
 *
 * @param byName sand and clay of the middle of each class
 */
public record TextureClasses(Map<String, Minerals> byName) {

    private static final List<String> COLUMNS =
            List.of("texture", "sand_fraction", "clay_fraction", "source");

    public TextureClasses {
        byName = Map.copyOf(byName);
    }

    /**
     * The mineral part of a soil.
     *
     * @param sandFraction by weight, 0 to 1
     * @param clayFraction by weight, 0 to 1
     */
    public record Minerals(double sandFraction, double clayFraction) {}

    /**
     * Reads the table.
     *
     * @throws BadTableException where it cannot be used
     */
    public static TextureClasses of(TableFolder folder) {
        Map<String, Minerals> classes = new LinkedHashMap<>();
        for (TableRow row : folder.rows("soils.csv", COLUMNS)) {
            classes.put(
                    row.text("texture"),
                    new Minerals(row.number("sand_fraction"), row.number("clay_fraction")));
        }
        return new TextureClasses(classes);
    }
}
