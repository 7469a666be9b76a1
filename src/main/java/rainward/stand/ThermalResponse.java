package rainward.stand;

import rainward.farm.Species;

/**
 * Degrees that count: rising in a straight line from base to optimum, falling in a straight line to
 * zero at the ceiling; nothing outside. Below the optimum it is the thermal time of Bradford 2002.
 */
final class ThermalResponse {
    private final double baseTempC;
    private final double ceilingTempC;
    private final double falling;

    ThermalResponse(Species.Cardinal cardinal) {
        baseTempC = cardinal.baseTempC();
        ceilingTempC = cardinal.ceilingTempC();
        falling = (cardinal.optimumTempC() - baseTempC) / (ceilingTempC - cardinal.optimumTempC());
    }

    /**
     * Degrees above base that count at a temperature.
     *
     * @param tempC of the soil [C]
     * @return 0 to optimum less base [C]
     */
    double degrees(double tempC) {
        return Math.max(0, Math.min(tempC - baseTempC, (ceilingTempC - tempC) * falling));
    }
}
