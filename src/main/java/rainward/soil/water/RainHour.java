package rainward.soil.water;

/**
 * Rain of one hour on all traces.
 *
 * @param amountMm total [mm]
 * @param peak30MmPerH greatest 30-minute intensity [mm/h]
 */
public record RainHour(double[] amountMm, double[] peak30MmPerH) {}
