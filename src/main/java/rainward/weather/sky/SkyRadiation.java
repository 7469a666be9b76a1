package rainward.weather.sky;

/** Global radiation under a given sky. */
public final class SkyRadiation {

    /**
     * Kasten and Czeplak 1980 (Solar Energy 24:177-189), fitted to ten years at Hamburg: radiation
     * under {@code N} eighths of cloud over that of a clear sky is {@code 1 - 0.75 (N/8)^3.4}, as
     * several public programs print it that name the paper. Another fit to measured sun lies up to
     * 0.105 of a clear sun lower in summer ({@code SkyRadiationTest}).
     */
    private static final double OVERCAST_LOSS = 0.75;

    private static final double CLOUD_POWER = 3.4;

    /** kRs away from coasts, FAO-56 eq. 50, from memory; it is 0.19 on coasts [C^-0.5]. */
    private static final double INTERIOR_KRS = 0.16;

    private SkyRadiation() {}

    /**
     * Clear-sky radiation where turbidity is not known, FAO-56 eq. 37.
     *
     * @param extraterrestrialMjPerM2 at the top of the air [MJ/m2]
     * @param elevationM above the sea, up to 6000 [m]
     * @return on the flat, same step of time [MJ/m2]
     */
    public static double clearSkyMjPerM2(double extraterrestrialMjPerM2, double elevationM) {
        return (0.75 + 2e-5 * elevationM) * extraterrestrialMjPerM2;
    }

    /**
     * Share of clear-sky radiation that comes through cloud, Kasten and Czeplak 1980.
     *
     * @param skyCoverFraction 0 clear to 1 overcast
     * @return 0.25 to 1
     */
    static double throughCloudFraction(double skyCoverFraction) {
        return 1 - OVERCAST_LOSS * Math.pow(skyCoverFraction, CLOUD_POWER);
    }

    /**
     * Sky cover that lets a share of clear-sky radiation through: the inverse of
     * {@link #throughCloudFraction}; shares beyond 0.25 to 1 are held there.
     */
    public static double skyCoverFraction(double throughFraction) {
        double held = Math.max(1 - OVERCAST_LOSS, Math.min(1, throughFraction));
        return Math.pow((1 - held) / OVERCAST_LOSS, 1 / CLOUD_POWER);
    }

    /** Angstrom's relation, FAO-56 eq. 35 with a 0.25 and b 0.50 [MJ/m2]. */
    static double fromSunshineMjPerM2(double sunshineFraction, double extraterrestrialMjPerM2) {
        return (0.25 + 0.50 * sunshineFraction) * extraterrestrialMjPerM2;
    }

    /**
     * Hargreaves' radiation from the range of temperature, FAO-56 eq. 50, held to clear sky.
     *
     * @param rangeC day's highest less lowest air temperature, not below zero [C]
     * @param extraterrestrialMjPerM2 of the day [MJ/m2]
     * @param elevationM above the sea [m]
     * @return of the day [MJ/m2]
     */
    public static double fromTemperatureRangeMjPerM2(
            double rangeC, double extraterrestrialMjPerM2, double elevationM) {
        return Math.min(
                INTERIOR_KRS * Math.sqrt(Math.max(0, rangeC)) * extraterrestrialMjPerM2,
                clearSkyMjPerM2(extraterrestrialMjPerM2, elevationM));
    }
}
