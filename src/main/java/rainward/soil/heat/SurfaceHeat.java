package rainward.soil.heat;

/**
 * What sun, sky and air do to the surface in one hour, the same on all traces.
 *
 * @param airTempC mean of the hour [C]
 * @param sunWPerM2 global radiation on the flat [W/m2]
 * @param longwaveLossWPerM2 net longwave that a surface at air temperature loses [W/m2]
 * @param windMps at 2 m [m/s]
 */
public record SurfaceHeat(
        double airTempC, double sunWPerM2, double longwaveLossWPerM2, double windMps) {

    private static final double STEFAN_BOLTZMANN = 5.67e-8;
    private static final double KELVIN = 273.16;
    private static final double AIR_HEAT_J_PER_M3_K = 1200;
    private static final double KARMAN = 0.41;
    private static final double GRAVITY = 9.81;
    private static final double HEIGHT_M = 2;
    private static final double LEAST_WIND_MPS = 0.5;

    /** Still nights keep at least this share squared of the exchange of even layering. */
    private static final double LEAST_HELD = 0.3;

    /** Still air and no radiation at a temperature, for checks against conduction alone. */
    public static SurfaceHeat stillAt(double tempC) {
        return new SurfaceHeat(tempC, 0, 0, 2);
    }

    /**
     * From air and sky: longwave by FAO-56 eq. 39 by the hour, its cloud term from the share of
     * clear-sky radiation that comes through, {@code 1 - 0.75 N^3.4} (Kasten and Czeplak 1980).
     */
    public static SurfaceHeat of(
            double airTempC, double dewPointC, double windMps, double skyCover, double sunMjPerM2) {
        double through = throughCloud(skyCover);
        double vapourKpa = 0.6108 * Math.exp(17.27 * dewPointC / (dewPointC + 237.3));
        double clouds = Math.max(0.05, 1.35 * Math.max(0.3, through) - 0.35);
        double black = STEFAN_BOLTZMANN * Math.pow(airTempC + KELVIN, 4);
        double loss = black * (0.34 - 0.14 * Math.sqrt(vapourKpa)) * clouds;
        return new SurfaceHeat(airTempC, sunMjPerM2 * 1e6 / 3600, loss, windMps);
    }

    /** Share of clear-sky radiation under a cover, Kasten and Czeplak 1980. */
    public static double throughCloud(double skyCover) {
        return 1 - 0.75 * Math.pow(skyCover, 3.4);
    }

    /**
     * Heat that a surface gives off per degree above air: to the air by the resistance between the
     * surface and 2 m (FAO-56 eq. 4), corrected for the layering that the surface's own warmth
     * makes (Choudhury, Reginato and Idso 1986: {@code ra / (1 + delta)^p}, {@code delta = 5 g z
     * (Ts - Ta) / (Ta u^2)}, p 0.75 where the surface is warmer, 2 where it is colder; from
     * memory), and to the sky.
     *
     * @param drag of {@link #drag}
     * @param warmerC surface over air temperature [C]
     * @return [W/m2/K]
     */
    public double lossWPerM2K(double drag, double warmerC) {
        double wind = Math.max(LEAST_WIND_MPS, windMps);
        double kelvin = airTempC + KELVIN;
        double delta = 5 * GRAVITY * HEIGHT_M * warmerC / (kelvin * wind * wind);
        double root = Math.sqrt(1 + Math.max(0, delta));
        double lifted = root * Math.sqrt(root);
        double held = Math.max(LEAST_HELD, 1 + Math.min(0, delta));
        double toAir = AIR_HEAT_J_PER_M3_K * drag * wind * lifted * held * held;
        return toAir + 4 * STEFAN_BOLTZMANN * kelvin * kelvin * kelvin;
    }

    /**
     * Conductance of evenly layered air per wind, FAO-56 eq. 4: {@code k^2 / (ln((z - d)/z0) ln((z
     * - d)/z0h))} with z 2 m.
     *
     * @param roughnessM z0 for momentum; z0h for heat is a tenth of it [m]
     * @param displacementM d, that a stand lifts the wind [m]
     */
    public static double drag(double roughnessM, double displacementM) {
        double above = HEIGHT_M - displacementM;
        return KARMAN * KARMAN / (Math.log(above / roughnessM) * Math.log(10 * above / roughnessM));
    }
}
