package rainward.board.house;

import rainward.farm.Window;

/**
 * A gauge that was read.
 *
 * @param property where it stands
 * @param stretch from when to when it held the rain
 * @param rainMm what it held [mm]
 */
public record Gauge(String property, Window stretch, double rainMm) {}
