package rainward.soil.verify;

/**
 * Spreads a day's rain to its hours by the type II distribution of TR-55 (24-hour storm of most of
 * the United States; ordinates from memory). The rule says nothing of the real hours; it gives a
 * day one burst, as summer rain has, and is the same everywhere.
 */
public final class StormDay {

    /** Share of the day's rain that has fallen by the end of each hour. */
    private static final double[] FALLEN = {
        0.011, 0.022, 0.034, 0.048, 0.063, 0.080, 0.098, 0.120, 0.147, 0.181, 0.235, 0.663,
        0.772, 0.820, 0.854, 0.880, 0.902, 0.921, 0.937, 0.952, 0.965, 0.977, 0.989, 1.000
    };

    private StormDay() {}

    /** Rain of one of the 24 hours of a day with that total [mm]. */
    public static double hourMm(double dayMm, int hour) {
        double before = hour == 0 ? 0 : FALLEN[hour - 1];
        return dayMm * (FALLEN[hour] - before);
    }
}
