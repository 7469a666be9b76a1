package rainward.weather.trace;

import java.util.Arrays;
import rainward.farm.Window;
import rainward.weather.rain.RainAmount;

/** What traces come to over a window. */
public final class Totals {

    private Totals() {}

    /** Rain of a window on each trace [mm]. */
    public static double[] ofMm(Traces traces, Window window) {
        double[] totals = new double[traces.count()];
        for (int h = traces.hourOf(window.from()); h < traces.hourOf(window.to()); h++) {
            for (int n = 0; n < totals.length; n++) {
                totals[n] += traces.rainMm()[h][n];
            }
        }
        return totals;
    }

    /** Traces on which it rains measurably. */
    public static long wet(double[] totalsMm) {
        return Arrays.stream(totalsMm)
                .filter(mm -> mm >= RainAmount.MEASURABLE_MM - 1e-9)
                .count();
    }

    public static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }
}
