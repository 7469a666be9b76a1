package rainward.input.check;

import java.util.List;
import rainward.farm.Require;

/**
 * Plants counted at several places of a field.
 *
 * @param placeM2 ground of one count [m2]
 * @param plants counted, one entry a place; not empty
 */
public record PlantCount(double placeM2, List<Integer> plants) {

    /** Common practice, no source: fewer places than this tell little. */
    public static final int FEWEST_PLACES = 5;

    public PlantCount {
        Require.positive("placeM2", placeM2);
        plants = List.copyOf(plants);
        Require.that(!plants.isEmpty(), "count at one place at least");
        plants.forEach(count -> Require.inRange("plants counted", count, 0, 100_000));
    }

    /** Inside a ring thrown on the ground. */
    public static PlantCount inRing(double diameterM, List<Integer> plants) {
        double radiusM = Require.positive("diameterM", diameterM) / 2;
        return new PlantCount(Math.PI * radiusM * radiusM, plants);
    }

    /** Along a stretch of one row. */
    public static PlantCount alongRow(double lengthM, double spacingM, List<Integer> plants) {
        return new PlantCount(
                Require.positive("lengthM", lengthM) * Require.positive("spacingM", spacingM),
                plants);
    }

    /** Mean over the places [1/m2]. */
    public double plantsPerM2() {
        return mean() / placeM2;
    }

    /** Standard error of that mean [1/m2]; of a single place it is not known, so as large as it. */
    public double errorPerM2() {
        int places = plants.size();
        if (places < 2) {
            return plantsPerM2();
        }
        double squares = plants.stream()
                .mapToDouble(count -> (count - mean()) * (count - mean()))
                .sum();
        return Math.sqrt(squares / (places - 1) / places) / placeM2;
    }

    private double mean() {
        return plants.stream().mapToInt(Integer::intValue).average().orElseThrow();
    }
}
