package rainward.soil.verify;

import rainward.soil.property.SaxtonRawls;

/**
 * The plain model to beat: one bucket of 20 cm. A day's rain fills it, what is over field capacity
 * drains, evapotranspiration takes its reference times the share of available water left.
 */
final class SingleBucket {

    private static final double DEPTH_MM = 200;

    private final double wiltingMm;
    private final double capacityMm;
    private double waterMm;

    SingleBucket(SaxtonRawls soil) {
        this.wiltingMm = soil.wiltingPointFraction() * DEPTH_MM;
        this.capacityMm = soil.fieldCapacityFraction() * DEPTH_MM;
        this.waterMm = capacityMm;
    }

    /**
     * One day.
     *
     * @param rainMm of the day [mm]
     * @param referenceMm reference evapotranspiration of the day [mm]
     * @return water content at its end [m3/m3]
     */
    double day(double rainMm, double referenceMm) {
        waterMm = Math.min(capacityMm, waterMm + rainMm);
        double left = (waterMm - wiltingMm) / (capacityMm - wiltingMm);
        waterMm = Math.max(wiltingMm, waterMm - referenceMm * left);
        return waterMm / DEPTH_MM;
    }
}
