package rainward.weather.climate;

/**
 * Course of air temperature through a day from its lowest and highest: a sine by day, a decay by
 * night (Parton and Logan 1981, Agric. Meteorol. 23:205-216; coefficients for air at 150 cm).
 */
final class PartonLogan {

    /** How long after solar noon the day is hottest, a [h]. */
    private static final double LAG_OF_HIGHEST_H = 1.86;

    /** How fast the night cools, b. */
    private static final double NIGHT_DECAY = 2.20;

    /** How long after sunrise it is coldest, c [h]. */
    private static final double LAG_OF_LOWEST_H = -0.17;

    private PartonLogan() {}

    /** True where the day's sine holds, not the night's decay. */
    static boolean byDay(double hoursSinceSunrise, double dayHours) {
        return hoursSinceSunrise >= LAG_OF_LOWEST_H && hoursSinceSunrise <= dayHours;
    }

    /**
     * Temperature by day: {@code Tmin + (Tmax - Tmin) sin(pi m / (Y + 2a))}, m hours after the
     * lowest.
     *
     * @param range of the day
     * @param hoursSinceSunrise up to sunset [h]
     * @param dayHours from sunrise to sunset, Y [h]
     * @return air temperature [C]
     */
    static double dayC(TempRange range, double hoursSinceSunrise, double dayHours) {
        double m = hoursSinceSunrise - LAG_OF_LOWEST_H;
        double sine = Math.sin(Math.PI * m / (dayHours + 2 * LAG_OF_HIGHEST_H));
        return range.airTempMinC() + range.spanC() * sine;
    }

    /**
     * Temperature by night: {@code Tmin + (Tsunset - Tmin) exp(-b n / Z)}, the form that does not
     * quite come down to the lowest.
     *
     * @param airTempMinC lowest of the morning that ends the night [C]
     * @param sunsetTempC at sunset [C]
     * @param hoursSinceSunset n [h]
     * @param nightHours from sunset to sunrise, Z [h]
     * @return air temperature [C]
     */
    static double nightC(
            double airTempMinC, double sunsetTempC, double hoursSinceSunset, double nightHours) {
        double left = Math.exp(-NIGHT_DECAY * hoursSinceSunset / nightHours);
        return airTempMinC + (sunsetTempC - airTempMinC) * left;
    }
}
