package rainward.input.seed;

import java.util.List;
import rainward.farm.Require;

/**
 * The seed boxes across a seeder. Each feeds its part of the width, so each is filled by its part
 * of the width and all run low together.
 *
 * @param boxes from left to right; not empty
 * @param heelFraction share of a full load that must stay in, or the meters starve, 0 to 0.5
 */
public record SeedBoxes(List<Box> boxes, double heelFraction) {

    public SeedBoxes {
        boxes = List.copyOf(boxes);
        Require.that(!boxes.isEmpty(), "a seeder needs at least one seed box");
        Require.inRange("heelFraction", heelFraction, 0, 0.5);
    }

    public double widthM() {
        return boxes.stream().mapToDouble(Box::widthM).sum();
    }

    /**
     * Greatest load that is split evenly: the box that is smallest for its width sets it.
     *
     * @param densityKgPerM3 of the seed in bulk [kg/m3]
     * @return over all boxes [kg]
     */
    public double capacityKg(double densityKgPerM3) {
        Require.positive("densityKgPerM3", densityKgPerM3);
        double loadL = boxes.stream()
                .mapToDouble(box -> box.volumeL() * widthM() / box.widthM())
                .min()
                .orElseThrow();
        return loadL * densityKgPerM3 / 1_000;
    }

    /** What must stay in at the end of a load [kg]. */
    public double heelKg(double densityKgPerM3) {
        return heelFraction * capacityKg(densityKgPerM3);
    }

    /** A load over the boxes, by width, from left to right [kg]. */
    public List<Double> split(double loadKg) {
        Require.notNegative("loadKg", loadKg);
        return boxes.stream().map(box -> loadKg * box.widthM() / widthM()).toList();
    }

    /**
     * One box.
     *
     * @param widthM of the seeder that it feeds [m]
     * @param volumeL of seed that it holds level full [L]
     */
    public record Box(double widthM, double volumeL) {

        public Box {
            Require.positive("box widthM", widthM);
            Require.positive("box volumeL", volumeL);
        }
    }
}
