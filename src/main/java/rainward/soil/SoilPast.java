package rainward.soil;

/**
 * What a column did under observed weather; entry {@code h} is the state at the end of hour
 * {@code h}.
 *
 * @param end state after the last hour
 * @param waterFraction volumetric water content at the depth asked for [m3/m3]
 * @param tempC soil temperature there [C]
 */
public record SoilPast(SoilState end, double[] waterFraction, double[] tempC) {}
