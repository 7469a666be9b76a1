package rainward.input.seeder;

import rainward.farm.Require;

/**
 * Seed caught under a seeder.
 *
 * @param strip the ground it stands for, over the entire width
 * @param outlets how many were caught of how many
 * @param caughtKg weight caught, vessel off [kg]
 */
public record CatchTest(CatchStrip strip, Outlets outlets, double caughtKg) {

    public CatchTest {
        Require.notNegative("caughtKg", caughtKg);
    }

    /** {@code rate = caught / area}, as if all outlets gave what the caught ones did [kg/ha]. */
    public double rateKgPerHa() {
        return caughtKg / outlets.share() / strip.areaHa();
    }

    /**
     * What the output has to be multiplied with.
     *
     * @param targetKgPerHa wanted, out of the bag [kg/ha]
     * @return above 0; 1 where the setting is right
     */
    public double factorTo(double targetKgPerHa) {
        Require.positive("targetKgPerHa", targetKgPerHa);
        Require.that(caughtKg > 0, "nothing was caught: outlets are shut or plugged");
        return targetKgPerHa / rateKgPerHa();
    }

    /**
     * Outlets, rows or boxes under which seed was caught.
     *
     * @param caught how many
     * @param all of the seeder
     */
    public record Outlets(int caught, int all) {
        public static final Outlets ALL = new Outlets(1, 1);

        public Outlets {
            Require.inRange("outlets of the seeder", all, 1, 1_000);
            Require.inRange("outlets caught", caught, 1, all);
        }

        double share() {
            return (double) caught / all;
        }
    }
}
