package rainward.input.seed;

import java.util.List;
import rainward.farm.Require;

/**
 * A stop to fill the seed boxes.
 *
 * @param field where
 * @param mix what goes in
 * @param afterHa worked in that field before the stop; 0 at the gate [ha]
 * @param addKg over all boxes [kg]
 * @param perBoxKg the same, from left to right [kg]
 * @param staysKg of it, what stays in to the end, or the meters starve [kg]
 * @param emptied true where seed of another mix has to come out first
 */
public record Fill(
        String field,
        String mix,
        double afterHa,
        double addKg,
        List<Double> perBoxKg,
        double staysKg,
        boolean emptied) {

    public Fill {
        perBoxKg = List.copyOf(perBoxKg);
    }

    /**
     * A field on a seeder's route.
     *
     * @param field its name
     * @param mix its name
     * @param areaHa sown there in one go [ha]
     * @param rateKgPerHa out of the box [kg/ha]
     * @param densityKgPerM3 of the seed in bulk [kg/m3]
     */
    public record Leg(
            String field, String mix, double areaHa, double rateKgPerHa, double densityKgPerM3) {

        public Leg {
            Require.positive("areaHa", areaHa);
            Require.positive("rateKgPerHa", rateKgPerHa);
            Require.positive("densityKgPerM3", densityKgPerM3);
        }

        double needKg() {
            return areaHa * rateKgPerHa;
        }
    }
}
