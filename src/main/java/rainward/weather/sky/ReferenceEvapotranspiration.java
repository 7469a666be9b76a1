package rainward.weather.sky;

/** Evapotranspiration of a short, well-watered reference grass. */
public final class ReferenceEvapotranspiration {

    private ReferenceEvapotranspiration() {}

    /**
     * What the air asks for.
     *
     * @param airTempC mean of the step [C]
     * @param saturationKpa saturation vapour pressure of the step [kPa]
     * @param vapourKpa actual vapour pressure [kPa]
     * @param windMps at 2 m [m/s]
     * @param pressureKpa of the air [kPa]
     */
    record Air(
            double airTempC,
            double saturationKpa,
            double vapourKpa,
            double windMps,
            double pressureKpa) {}

    /**
     * Numerator and denominator constants of the step and of the light.
     *
     * @param numeratorFactor Cn [K mm s3/Mg/step]
     * @param denominatorFactor Cd [s/m]
     * @param groundHeatFraction share of net radiation that goes into the ground
     */
    record Constants(double numeratorFactor, double denominatorFactor, double groundHeatFraction) {

        /** Short reference by the hour, net radiation above zero; ASCE-EWRI 2005 table 1. */
        static final Constants HOUR_OF_DAY = new Constants(37, 0.24, 0.1);

        /** Short reference by the hour, net radiation not above zero; ASCE-EWRI 2005 table 1. */
        static final Constants HOUR_OF_NIGHT = new Constants(37, 0.96, 0.5);

        /** FAO-56 eq. 6, ground heat of a day taken as nought; ASCE-EWRI 2005 has the same. */
        static final Constants DAY = new Constants(900, 0.34, 0);
    }

    /**
     * Penman-Monteith in the standard form, ASCE-EWRI 2005 eq. 1; with {@link Constants#DAY} it is
     * FAO-56 eq. 6.
     *
     * @param air what the air asks for
     * @param netMjPerM2 net radiation of the step [MJ/m2]
     * @param constants of step and light
     * @return evapotranspiration of the step; dew is below zero [mm]
     */
    static double penmanMonteithMm(Air air, double netMjPerM2, Constants constants) {
        double slope = AirPhysics.saturationSlopeKpaPerC(air.airTempC);
        double gamma = AirPhysics.psychrometricKpaPerC(air.pressureKpa);
        double available = netMjPerM2 * (1 - constants.groundHeatFraction);
        double deficit = air.saturationKpa - air.vapourKpa;
        double drying =
                gamma * constants.numeratorFactor / (air.airTempC + 273) * air.windMps * deficit;
        return (0.408 * slope * available + drying)
                / (slope + gamma * (1 + constants.denominatorFactor * air.windMps));
    }

    /**
     * Hourly short reference, ASCE-EWRI 2005: constants of day where net radiation is above zero
     * [mm].
     */
    static double hourMm(Air air, double netMjPerM2) {
        Constants light = netMjPerM2 > 0 ? Constants.HOUR_OF_DAY : Constants.HOUR_OF_NIGHT;
        return penmanMonteithMm(air, netMjPerM2, light);
    }

    /**
     * Hargreaves' daily reference for days of which only temperatures are known, FAO-56 eq. 52.
     *
     * @param airTempMinC lowest of the day [C]
     * @param airTempMaxC highest of the day [C]
     * @param extraterrestrialMjPerM2 of the day; turned into mm here (0.408) [MJ/m2]
     * @return reference evapotranspiration of the day [mm]
     */
    public static double hargreavesDayMm(
            double airTempMinC, double airTempMaxC, double extraterrestrialMjPerM2) {
        double mean = (airTempMinC + airTempMaxC) / 2;
        double range = Math.sqrt(Math.max(0, airTempMaxC - airTempMinC));
        return Math.max(0, 0.0023 * (mean + 17.8) * range * 0.408 * extraterrestrialMjPerM2);
    }
}
