package rainward.weather.climate;

import rainward.farm.Require;

/**
 * A day's range of air temperature.
 *
 * @param airTempMinC lowest [C]
 * @param airTempMaxC highest, not below the lowest [C]
 */
public record TempRange(double airTempMinC, double airTempMaxC) {

    public TempRange {
        Require.inRange("airTempMinC", airTempMinC, -60, 60);
        Require.inRange("airTempMaxC", airTempMaxC, airTempMinC, 60);
    }

    public double spanC() {
        return airTempMaxC - airTempMinC;
    }
}
