package rainward.soil.verify;

import java.util.List;

/**
 * What {@code verify soil} prints; the names of the components are the names of its JSON.
 *
 * @param stations each station with sensor days, by name
 * @param median over the stations with at least {@value SoilVerification#LEAST_DAYS} sensor days
 * @param wetting rains after a dry spell, those stations together
 */
public record SoilReport(List<Figures> stations, Figures median, Wetting wetting) {

    public SoilReport {
        stations = List.copyOf(stations);
    }

    /**
     * Figures of one station, May to September, daily means at 5 cm; water in m3/m3.
     *
     * @param station its name, or what the row stands for
     * @param days with a measured water content
     * @param r correlation of the column with the sensor; the column is never shown the sensor
     * @param ubRmse its unbiased root mean square error [m3/m3]
     * @param bias column less sensor [m3/m3]
     * @param bucketR correlation of the single bucket
     * @param bucketUbRmse its unbiased root mean square error [m3/m3]
     * @param persistenceUbRmse of the value measured seven days before, the queue's horizon [m3/m3]
     * @param soilTempRmseC of the column's temperature, bias included [C]
     * @param told the same with yesterday's or last week's sensor value told to both
     */
    public record Figures(
            String station,
            int days,
            double r,
            double ubRmse,
            double bias,
            double bucketR,
            double bucketUbRmse,
            double persistenceUbRmse,
            double soilTempRmseC,
            Told told) {}

    /**
     * Like for like by the lead: persistence carries a sensor value forward, the column adds its
     * own change to it.
     *
     * @param startPersistenceUbRmse the first value of the season for all of it: as long without a
     *     reading as the column is [m3/m3]
     * @param dayPersistenceUbRmse yesterday's value for today [m3/m3]
     * @param dayUbRmse yesterday's value with the column's change since [m3/m3]
     * @param weekUbRmse last week's value with the column's change since [m3/m3]
     */
    public record Told(
            double startPersistenceUbRmse,
            double dayPersistenceUbRmse,
            double dayUbRmse,
            double weekUbRmse) {}

    /**
     * Rains of 10 mm or more after four days of less than 1 mm each.
     *
     * @param events counted
     * @param measuredShare that raised the sensor by more than 0.02 m3/m3 by the next day
     * @param modelShare that raised the column so
     */
    public record Wetting(int events, double measuredShare, double modelShare) {}
}
