package rainward.soil;

/**
 * Rain of one hour on all traces.
 *
 * @param amountMm total [mm]
 * @param peak30MmPerH greatest 30-minute intensity [mm/h]
 */
record RainHour(double[] amountMm, double[] peak30MmPerH) {}
