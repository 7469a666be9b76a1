package rainward.weather.sky;

/** What the reference grass keeps of sun and sky, FAO-56 chapter 3 and ASCE-EWRI 2005. */
final class NetRadiation {

    /** Albedo of the reference grass, FAO-56 eq. 38. */
    private static final double ALBEDO = 0.23;

    /** Stefan-Boltzmann, FAO-56 eq. 39, from memory; ASCE 2005 prints 4.901e-9 [MJ/K4/m2/day]. */
    private static final double SIGMA_DAY = 4.903e-9;

    /** Stefan-Boltzmann by the hour, ASCE-EWRI 2005 eq. 44 [MJ/K4/m2/h]. */
    private static final double SIGMA_HOUR = 2.042e-10;

    private static final double KELVIN = 273.16;

    private NetRadiation() {}

    /** Net shortwave, FAO-56 eq. 38 [MJ/m2]. */
    static double shortwaveMjPerM2(double radiationMjPerM2) {
        return (1 - ALBEDO) * radiationMjPerM2;
    }

    /**
     * Net longwave loss of a day, FAO-56 eq. 39.
     *
     * @param airTempMinC lowest of the day [C]
     * @param airTempMaxC highest of the day [C]
     * @param vapourKpa actual vapour pressure [kPa]
     * @param clearnessFraction radiation over clear-sky radiation
     * @return upwards [MJ/m2/day]
     */
    static double longwaveDayMjPerM2(
            double airTempMinC, double airTempMaxC, double vapourKpa, double clearnessFraction) {
        double black = (fourth(airTempMinC) + fourth(airTempMaxC)) / 2;
        return SIGMA_DAY
                * black
                * emissivity(vapourKpa)
                * (1.35 * Math.min(1, clearnessFraction) - 0.35);
    }

    /**
     * Net longwave loss of an hour, ASCE-EWRI 2005 eq. 44.
     *
     * @param airTempC mean of the hour [C]
     * @param vapourKpa actual vapour pressure [kPa]
     * @param cloudFunction of {@link #cloudFunction}
     * @return upwards [MJ/m2/h]
     */
    static double longwaveHourMjPerM2(double airTempC, double vapourKpa, double cloudFunction) {
        return SIGMA_HOUR * cloudFunction * emissivity(vapourKpa) * fourth(airTempC);
    }

    /**
     * Cloudiness function, ASCE-EWRI 2005 eq. 45, within its bounds.
     *
     * @param clearnessFraction radiation over clear-sky radiation
     * @return 0.05 to 1
     */
    static double cloudFunction(double clearnessFraction) {
        double held = Math.max(0.3, Math.min(1, clearnessFraction));
        return Math.max(0.05, Math.min(1, 1.35 * held - 0.35));
    }

    private static double emissivity(double vapourKpa) {
        return 0.34 - 0.14 * Math.sqrt(vapourKpa);
    }

    private static double fourth(double airTempC) {
        double kelvin = airTempC + KELVIN;
        return kelvin * kelvin * kelvin * kelvin;
    }
}
