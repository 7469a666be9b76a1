package rainward.weather.sky;

/** Vapour and pressure of air, FAO-56 chapter 3 (Allen et al. 1998). */
public final class AirPhysics {

    private AirPhysics() {}

    /** Pressure of the air at a height above the sea, FAO-56 eq. 7 [kPa]. */
    static double pressureKpa(double elevationM) {
        return 101.3 * Math.pow((293 - 0.0065 * elevationM) / 293, 5.26);
    }

    /** Psychrometric constant, FAO-56 eq. 8 [kPa/C]. */
    static double psychrometricKpaPerC(double pressureKpa) {
        return 0.665e-3 * pressureKpa;
    }

    /** Saturation vapour pressure, FAO-56 eq. 11 [kPa]. */
    public static double saturationKpa(double airTempC) {
        return 0.6108 * Math.exp(17.27 * airTempC / (airTempC + 237.3));
    }

    /** Slope of the saturation curve, FAO-56 eq. 13 [kPa/C]. */
    static double saturationSlopeKpaPerC(double airTempC) {
        double above = airTempC + 237.3;
        return 4098 * saturationKpa(airTempC) / (above * above);
    }

    /** Mean saturation vapour pressure of a day, FAO-56 eq. 12 [kPa]. */
    public static double daySaturationKpa(double airTempMinC, double airTempMaxC) {
        return (saturationKpa(airTempMinC) + saturationKpa(airTempMaxC)) / 2;
    }

    /**
     * Vapour pressure from wet and dry bulb of an aspirated psychrometer, FAO-56 eq. 15, 16 [kPa].
     */
    static double fromBulbsKpa(double dryTempC, double wetTempC, double pressureKpa) {
        return saturationKpa(wetTempC) - 0.000662 * pressureKpa * (dryTempC - wetTempC);
    }

    /**
     * Vapour pressure of a day from the range of relative humidity, FAO-56 eq. 17.
     *
     * @param airTempMinC lowest of the day [C]
     * @param airTempMaxC highest of the day [C]
     * @param humidityMaxFraction highest relative humidity, 0 to 1
     * @param humidityMinFraction lowest relative humidity, 0 to 1
     * @return vapour pressure [kPa]
     */
    static double fromHumidityKpa(
            double airTempMinC,
            double airTempMaxC,
            double humidityMaxFraction,
            double humidityMinFraction) {
        return (saturationKpa(airTempMinC) * humidityMaxFraction
                        + saturationKpa(airTempMaxC) * humidityMinFraction)
                / 2;
    }

    /** Dew point of a vapour pressure, FAO-56 eq. 11 turned round; from -40 up [C]. */
    public static double dewPointC(double vapourKpa) {
        double log = Math.log(Math.max(1e-3, vapourKpa) / 0.6108);
        return 237.3 * log / (17.27 - log);
    }

    /**
     * Wind at 2 m over short grass from another height, FAO-56 eq. 47.
     *
     * @param windMps at the height measured [m/s]
     * @param heightM measured at, above 0.1 [m]
     * @return at 2 m [m/s]
     */
    public static double windAt2mMps(double windMps, double heightM) {
        return windMps * 4.87 / Math.log(67.8 * heightM - 5.42);
    }
}
