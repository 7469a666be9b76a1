package rainward.stand;

import rainward.farm.Species;
import rainward.stand.seedling.HydrothermalTime;

/**
 * Degrees that count for growth: rising in a straight line from base to optimum, falling in a
 * straight line to zero at the ceiling; nothing outside. Shoots and roots grow by it, and the
 * middle seed of a lot germinates by it in free water ({@link HydrothermalTime}).
 */
public final class ThermalResponse {
    private final double baseTempC;
    private final double ceilingTempC;
    private final double bestDegrees;
    private final double falling;

    public ThermalResponse(Species.Cardinal cardinal) {
        baseTempC = cardinal.baseTempC();
        ceilingTempC = cardinal.ceilingTempC();
        bestDegrees = cardinal.optimumTempC() - baseTempC;
        falling = bestDegrees / (ceilingTempC - cardinal.optimumTempC());
    }

    /**
     * Degrees above base that count at a temperature.
     *
     * @param tempC of the soil [C]
     * @return 0 to optimum less base [C]
     */
    public double degrees(double tempC) {
        return Math.max(0, Math.min(tempC - baseTempC, (ceilingTempC - tempC) * falling));
    }

    /** Rate at a temperature against the best, 0 to 1. */
    public double rateFraction(double tempC) {
        return degrees(tempC) / bestDegrees;
    }
}
