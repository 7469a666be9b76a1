package rainward.brief.making;

import rainward.farm.Require;

/**
 * How hot it feels in the shade: the heat index of the US National Weather Service, from its
 * published equations (key {@code nws-heat-index}).
 */
public final class HeatIndex {

    /**
     * Below this value of the simple form averaged with the temperature, that average holds [F].
     */
    private static final double REGRESSION_FROM_F = 80;

    private HeatIndex() {}

    /**
     * Heat index from air temperature and dew point. Humidity is the ratio of the saturation vapour
     * pressures at dew point and air temperature (FAO56 eq. 11 and 54).
     *
     * @param airTempC in the shade [C]
     * @param dewPointC at most the air temperature; more is taken as saturated [C]
     * @return how hot it feels [C]
     */
    public static double fromDewPointC(double airTempC, double dewPointC) {
        double humidityFraction =
                Math.min(1, saturationVapourKpa(dewPointC) / saturationVapourKpa(airTempC));
        return celsius(fahrenheit(airTempC * 1.8 + 32, 100 * humidityFraction));
    }

    /**
     * Heat index in the units of its equations: the simple form {@code 0.5 (T + 61 + 1.2 (T - 68) +
     * 0.094 R)} averaged with {@code T}; from 80 F on the regression of Rothfusz with its two
     * adjustments, for dry and for moist air.
     *
     * @param airTempF in the shade [F]
     * @param humidityPct relative humidity, 0 to 100 [%]
     * @return how hot it feels [F]
     */
    static double fahrenheit(double airTempF, double humidityPct) {
        Require.inRange("humidityPct", humidityPct, 0, 100);
        double simpleF = 0.5 * (airTempF + 61 + 1.2 * (airTempF - 68) + 0.094 * humidityPct);
        double averageF = (simpleF + airTempF) / 2;
        if (averageF < REGRESSION_FROM_F) {
            return averageF;
        }
        return regressionF(airTempF, humidityPct) + adjustmentF(airTempF, humidityPct);
    }

    /** Symbols as in the equation: T is the air temperature [F], R the relative humidity [%]. */
    private static double regressionF(double t, double r) {
        return -42.379
                + 2.04901523 * t
                + 10.14333127 * r
                - 0.22475541 * t * r
                - 0.00683783 * t * t
                - 0.05481717 * r * r
                + 0.00122874 * t * t * r
                + 0.00085282 * t * r * r
                - 0.00000199 * t * t * r * r;
    }

    private static double adjustmentF(double t, double r) {
        if (r < 13 && t >= 80 && t <= 112) {
            return -(13 - r) / 4 * Math.sqrt((17 - Math.abs(t - 95)) / 17);
        }
        if (r > 85 && t >= 80 && t <= 87) {
            return (r - 85) / 10 * (87 - t) / 5;
        }
        return 0;
    }

    private static double saturationVapourKpa(double tempC) {
        return 0.6108 * Math.exp(17.27 * tempC / (tempC + 237.3));
    }

    private static double celsius(double tempF) {
        return (tempF - 32) / 1.8;
    }

    /**
     * How much care a heat index asks for in general, by the guide of OSHA for outdoor work ("Using
     * the Heat Index"): below 91 F lower, to 103 F moderate, to 115 F high, above it very high.
     * Direct sun adds to it.
     */
    public enum Care {
        LOWER,
        MODERATE,
        HIGH,
        VERY_HIGH;

        /** The step a heat index falls in. */
        public static Care of(double heatIndexC) {
            double heatIndexF = heatIndexC * 1.8 + 32;
            if (heatIndexF < 91) {
                return LOWER;
            }
            if (heatIndexF < 103) {
                return MODERATE;
            }
            return heatIndexF <= 115 ? HIGH : VERY_HIGH;
        }
    }
}
