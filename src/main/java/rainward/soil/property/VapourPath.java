package rainward.soil.property;

/**
 * Dry soil on top as a resistance to vapour: below it water evaporates, through it vapour diffuses.
 * Diffusivity is that of still air times {@code a^(10/3) / n^2}, with air-filled pores {@code a}
 * and pore space {@code n} (Millington and Quirk 1961, from memory). Penman and Monteith (FAO-56
 * eq. 3) then leave {@code (D + g) / (D + g (1 + rs / ra))} of the rate of wet soil, with {@code D}
 * the slope of vapour pressure, {@code g} the psychrometric constant and {@code rs} the resistance.
 *
 * @param resistanceSPerM2 of a metre of dry soil [s/m2]
 */
public record VapourPath(double resistanceSPerM2) {

    /** Vapour in still air at 25 C; common handbook value, from memory. */
    private static final double STILL_AIR_M2_PER_S = 2.5e-5;

    /** {@code 208 / u} (FAO-56 box 4) at a wind of 2 m/s. */
    private static final double AIR_S_PER_M = 104;

    /** {@code g / (D + g)} by FAO-56 eq. 8 and 13 at 25 C near sea level. */
    private static final double VAPOUR_WEIGHT = 0.262;

    /** Through the worked top of a column, air dry. */
    public static VapourPath of(Layers layers) {
        double pores = layers.poreMm[0] / layers.thicknessMm[0];
        double air = pores * (1 - layers.airDryWetness());
        double open = Math.pow(air, 10.0 / 3) / (pores * pores);
        return new VapourPath(1 / (STILL_AIR_M2_PER_S * open));
    }

    /**
     * How much a millimetre of dry soil adds to {@code D + g}, as its share [1/mm]: {@code x} mm
     * let {@code 1 / (1 + x perDryMm)} of the rate of wet soil through.
     */
    public double perDryMm() {
        return VAPOUR_WEIGHT * resistanceSPerM2 / 1000 / AIR_S_PER_M;
    }
}
