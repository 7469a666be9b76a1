package rainward.input.lime;

import java.util.List;
import java.util.Locale;
import rainward.farm.Require;

/**
 * Where the pH of a field may go after a dose of lime: always a range. Lime goes on working for
 * three years (Minnesota counts what passes 60 mesh in full over three years); how much of the rise
 * falls to which year is common practice, no source.
 *
 * @param startPh before the dose
 * @param targetPh that the full need would bring
 * @param doseShare share of the full need that is spread, 0 to 1
 */
public record PhPath(double startPh, double targetPh, double doseShare) {
    private static final List<Range> RISE_SHARES =
            List.of(new Range(0.25, 0.60), new Range(0.45, 0.85), new Range(0.60, 1.0));

    public PhPath {
        Require.inRange("startPh", startPh, 3, 10);
        Require.inRange("targetPh", targetPh, startPh, 10);
        Require.inRange("doseShare", doseShare, 0, 1);
    }

    /**
     * The range after so many years.
     *
     * @param years 1 and more; after the third nothing is added
     */
    public Range after(int years) {
        Require.inRange("years", years, 1, 100);
        Range share = RISE_SHARES.get(Math.min(years, RISE_SHARES.size()) - 1);
        double risePh = (targetPh - startPh) * doseShare;
        return new Range(startPh + share.lowPh() * risePh, startPh + share.highPh() * risePh);
    }

    /** True only where even the high end of this year's range is at the target. */
    public boolean mayReachTargetThisYear() {
        return after(1).highPh() >= targetPh - 1e-9;
    }

    /** What can be said to the person. */
    public String words() {
        Range year = after(1);
        return String.format(
                Locale.ROOT,
                "pH %.1f now, %.1f to %.1f likely after a year%s",
                startPh,
                year.lowPh(),
                year.highPh(),
                mayReachTargetThisYear()
                        ? ""
                        : String.format(Locale.ROOT, "; %.1f not this year", targetPh));
    }

    /**
     * From low to high.
     *
     * @param lowPh not unlikely to be as low
     * @param highPh not unlikely to be as high
     */
    public record Range(double lowPh, double highPh) {}
}
