package rainward.farm;

/**
 * What is measured, with the unit that is used inside and how a person reads it. Factors are the
 * legal ones: international inch, foot, mile, pound and acre (NIST SP 811, appendix B).
 */
public enum Quantity {
    /** Inside [ha]. */
    AREA(new Reading("ac", 1 / 0.404_685_642_24, 0, 1), new Reading("ha", 1, 0, 1)),
    /** Rain and runoff, inside [mm]. */
    RAIN(new Reading("in", 1 / 25.4, 0, 2), new Reading("mm", 1, 0, 1)),
    /** Sowing depth and depth of dry soil, inside [cm]. */
    DEPTH(new Reading("in", 1 / 2.54, 0, 2), new Reading("cm", 1, 0, 1)),
    /** Inside [C]. */
    TEMPERATURE(new Reading("F", 1.8, 32, 0), new Reading("C", 1, 0, 0)),
    /** Wind, inside [m/s]. */
    WIND(new Reading("mph", 3.6 / 1.609_344, 0, 0), new Reading("m/s", 1, 0, 1)),
    /** Speed of machines, inside [km/h]. */
    SPEED(new Reading("mph", 1 / 1.609_344, 0, 1), new Reading("km/h", 1, 0, 1)),
    /** Inside [kg]. */
    MASS(new Reading("lb", 1 / 0.453_592_37, 0, 1), new Reading("kg", 1, 0, 1)),
    /** Seed, lime and fertilizer on the ground, inside [kg/ha]. */
    RATE(
            new Reading("lb/ac", 0.404_685_642_24 / 0.453_592_37, 0, 1),
            new Reading("kg/ha", 1, 0, 1)),
    /** Distance by road, inside [km]. */
    DISTANCE(new Reading("mi", 1 / 1.609_344, 0, 1), new Reading("km", 1, 0, 1)),
    /** Seed in a box, inside [L]; the US dry bushel of 2150.42 cubic inches. */
    VOLUME(new Reading("bu", 1 / 35.239_070_166_88, 0, 1), new Reading("L", 1, 0, 0)),
    /** Width of machines, inside [m]. */
    WIDTH(new Reading("ft", 1 / 0.3048, 0, 1), new Reading("m", 1, 0, 2));

    private final Reading us;
    private final Reading metric;

    Quantity(Reading us, Reading metric) {
        this.us = us;
        this.metric = metric;
    }

    Reading in(UnitSystem units) {
        return units == UnitSystem.US_CUSTOMARY ? us : metric;
    }

    /**
     * How a person reads it: {@code shown = inside x factor + offset}.
     *
     * @param symbol of the unit
     * @param factor from the unit inside
     * @param offset in the unit shown
     * @param decimals at most
     */
    record Reading(String symbol, double factor, double offset, int decimals) {

        double shown(double inside) {
            return inside * factor + offset;
        }

        double inside(double shown) {
            return (shown - offset) / factor;
        }
    }
}
