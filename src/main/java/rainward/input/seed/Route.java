package rainward.input.seed;

import java.util.ArrayList;
import java.util.List;

/**
 * Where on a seeder's route the boxes are filled: at a field's gate when what is in them does not
 * finish it, and again inside where a load ends. No fill is larger than what the rest of the route
 * takes of that mix, heel counted in.
 */
public final class Route {
    // Seed lighter than this is rounding [kg].
    private static final double NOTHING_KG = 1e-9;

    private final SeedBoxes boxes;
    private final List<Fill.Leg> legs;
    private final List<Fill> fills = new ArrayList<>();
    private String loadedMix = "";
    private double inBoxKg;

    private Route(SeedBoxes boxes, List<Fill.Leg> legs) {
        this.boxes = boxes;
        this.legs = List.copyOf(legs);
    }

    /** Stops along the route, in order; the boxes start empty. */
    public static List<Fill> fills(SeedBoxes boxes, List<Fill.Leg> legs) {
        Route route = new Route(boxes, legs);
        for (int i = 0; i < route.legs.size(); i++) {
            route.work(i);
        }
        return List.copyOf(route.fills);
    }

    private void work(int index) {
        Fill.Leg leg = legs.get(index);
        boolean emptied = !loadedMix.isEmpty() && !loadedMix.equals(leg.mix());
        inBoxKg = emptied ? 0 : inBoxKg;
        loadedMix = leg.mix();
        double heelKg = boxes.heelKg(leg.densityKgPerM3());
        double leftKg = leg.needKg();
        while (inBoxKg - heelKg < leftKg - NOTHING_KG) {
            double wantedKg = leftKg + laterKg(index) + heelKg;
            double roomKg = boxes.capacityKg(leg.densityKgPerM3());
            double loadKg = Math.max(inBoxKg, Math.min(roomKg, wantedKg));
            double addKg = loadKg - inBoxKg;
            double afterHa = (leg.needKg() - leftKg) / leg.rateKgPerHa();
            double staysKg = Math.max(0, heelKg - inBoxKg);
            fills.add(new Fill(
                    leg.field(), leg.mix(), afterHa, addKg, boxes.split(addKg), staysKg, emptied));
            emptied = false;
            inBoxKg = loadKg;
            double sownKg = Math.min(leftKg, inBoxKg - heelKg);
            leftKg -= sownKg;
            inBoxKg -= sownKg;
        }
        inBoxKg -= leftKg;
    }

    /** What the fields after this one take before another mix goes in [kg]. */
    private double laterKg(int index) {
        return legs.subList(index + 1, legs.size()).stream()
                .takeWhile(leg -> leg.mix().equals(loadedMix))
                .mapToDouble(Fill.Leg::needKg)
                .sum();
    }
}
