package rainward.input.seeder;

import rainward.farm.Require;

/**
 * The ground that a catch test stands for.
 *
 * @param widthM working width of what is caught [m]
 * @param distanceM driven, or turned at the wheel [m]
 */
public record CatchStrip(double widthM, double distanceM) {
    // Square metres in a hectare.
    private static final double M2_PER_HA = 10_000;

    public CatchStrip {
        Require.positive("widthM", widthM);
        Require.positive("distanceM", distanceM);
    }

    /** A strip of a given area: {@code distance = area / width}. */
    public static CatchStrip ofArea(double widthM, double areaHa) {
        return new CatchStrip(widthM, areaHa * M2_PER_HA / Require.positive("widthM", widthM));
    }

    /**
     * A strip turned at the drive wheel: {@code distance = turns x circumference}. Counted on the
     * seedbed itself, the circumference holds the slip (Southeast Farm Press).
     *
     * @param turns of the wheel
     * @param circumferenceM rolled in one turn [m]
     */
    public static CatchStrip ofTurns(double widthM, double turns, double circumferenceM) {
        return new CatchStrip(widthM, turns * circumferenceM);
    }

    /** Circumference of a wheel without slip, pi x diameter [m]. */
    public static double circumferenceM(double diameterM) {
        return Math.PI * Require.positive("diameterM", diameterM);
    }

    public double areaHa() {
        return widthM * distanceM / M2_PER_HA;
    }

    /** Turns of the wheel for this strip. */
    public double turns(double circumferenceM) {
        return distanceM / Require.positive("circumferenceM", circumferenceM);
    }

    /** What should be caught at a rate [kg]. */
    public double expectedKg(double rateKgPerHa) {
        return Require.notNegative("rateKgPerHa", rateKgPerHa) * areaHa();
    }
}
