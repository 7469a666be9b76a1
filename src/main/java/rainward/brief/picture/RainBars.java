package rainward.brief.picture;

import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import rainward.cycle.RainPicture.Bar;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;

/**
 * Amounts of rain by six hours: what is expected, and what comes one time in ten.
 *
 * @param canvas to draw on
 * @param axis of time
 * @param units of the amounts
 */
record RainBars(Canvas canvas, TimeAxis axis, UnitSystem units) {

    private static final double LETTERS = 9.5;
    private static final double GAP = 4;

    void draw(List<Bar> bars, double top, double base) {
        double mostMm = scaleTopMm(bars);
        canvas.text(
                unitName() + ": bar expected, line one time in ten over",
                LETTERS,
                axis.left(),
                top - 6);
        String most = units.roughRain(mostMm);
        canvas.textEndingAt(
                most.substring(0, most.indexOf(' ')), LETTERS, axis.left() - GAP, top + 4);
        canvas.textEndingAt("0", LETTERS, axis.left() - GAP, base + 1);
        canvas.line(axis.left(), top, axis.right(), top, Ink.FAINT);
        for (Bar bar : bars) {
            draw(bar, base, (base - top) / mostMm);
        }
        canvas.line(axis.left(), base, axis.right(), base, Ink.LINE);
    }

    private void draw(Bar bar, double base, double perMm) {
        column(bar, base - bar.meanMm() * perMm, base, Ink.AMOUNT);
        double middle = (axis.x(bar.window().from()) + axis.x(bar.window().to())) / 2;
        double tip = base - bar.p90Mm() * perMm;
        if (tip < base - 1) {
            canvas.line(middle, tip, middle, base, Ink.LINE);
            canvas.line(middle - 2, tip, middle + 2, tip, Ink.LINE);
        }
    }

    void column(Bar bar, double top, double base, Ink ink) {
        double from = axis.x(bar.window().from()) + 0.75;
        double to = axis.x(bar.window().to()) - 0.75;
        canvas.fill(new Rectangle2D.Double(from, top, to - from, base - top), ink);
    }

    private String unitName() {
        return units == UnitSystem.US_CUSTOMARY ? "inches" : units.symbol(Quantity.RAIN);
    }

    /** At least an inch or 20 mm, so that a drizzle does not look like a storm. */
    private double scaleTopMm(List<Bar> bars) {
        double stepMm = units == UnitSystem.US_CUSTOMARY ? 25.4 : 20;
        double mostMm =
                bars.stream().map(Bar::p90Mm).max(Comparator.naturalOrder()).orElse(0.0);
        return stepMm * Math.max(1, Math.ceil(mostMm / stepMm));
    }
}
