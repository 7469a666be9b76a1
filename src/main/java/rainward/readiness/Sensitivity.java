package rainward.readiness;

/**
 * What one factor costs: expected worth as things stand, and if this factor alone were perfect.
 *
 * @param factor that is made perfect
 * @param worth as things stand, 0 to 1
 * @param perfectWorth with the factor perfect, 0 to 1
 */
public record Sensitivity(Factor factor, double worth, double perfectWorth) {

    /** Worth that the factor costs; below zero where the perfect state would hurt. */
    public double gain() {
        return perfectWorth - worth;
    }

    /** What can be made perfect. */
    public enum Factor {
        /** A gentle soaking comes a day after seeding and the seedbed stays moist. */
        RAIN,
        /** The seedbed is moist when seed goes in and for three days. */
        MOISTURE,
        /** The soil is as warm as the species likes best, and the surface scorches nothing. */
        HEAT,
        /** A stand is worth as much however late it comes. */
        SEASON
    }
}
