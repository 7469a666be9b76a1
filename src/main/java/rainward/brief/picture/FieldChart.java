package rainward.brief.picture;

import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import rainward.brief.FieldPanel;
import rainward.cycle.RainPicture;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.readiness.Figures;
import rainward.stand.StandOutlook;

/**
 * What is ahead of one field on one axis of time: rain with its range, water at seed depth with its
 * range, and the chance of a stand by the hour that seed goes in.
 */
public final class FieldChart {

    /** Width as shown; the image has twice as many dots. */
    public static final int WIDTH = 300;

    /** Height as shown. */
    public static final int HEIGHT = 286;

    private static final double LEFT = 36;
    private static final double RIGHT = WIDTH - 6.0;
    private static final double NAMES = 26;
    private static final double CHANCE_TOP = 36;
    private static final double CHANCE_BASE = 100;
    private static final double RAIN_TOP = 126;
    private static final double RAIN_BASE = 172;
    private static final double WATER_TOP = 198;
    private static final double WATER_BASE = 264;
    private static final double SAMPLE = 16;
    private static final double SMALL = 9.5;

    private final FieldPanel panel;
    private final UnitSystem units;
    private final Canvas canvas;
    private final TimeAxis axis;

    private FieldChart(FieldPanel panel, ZoneId zone, UnitSystem units, Lettering lettering) {
        this.panel = panel;
        this.units = units;
        this.canvas = new Canvas(WIDTH, HEIGHT, lettering);
        Figures.Course water = panel.water();
        Window span = new Window(water.start(), water.timeOf(water.ranges().size() - 1));
        this.axis = new TimeAxis(span, zone, LEFT, RIGHT);
    }

    /**
     * Draws a panel.
     *
     * @param panel what is drawn
     * @param zone of the farm, for the days
     * @param units of the amounts
     * @param lettering letters as outlines
     */
    public static BufferedImage draw(
            FieldPanel panel, ZoneId zone, UnitSystem units, Lettering lettering) {
        return new FieldChart(panel, zone, units, lettering).draw();
    }

    private BufferedImage draw() {
        axis.draw(canvas, CHANCE_TOP, WATER_BASE, HEIGHT - 8.0);
        chances();
        List<RainPicture.Bar> inside = panel.rain().stream()
                .filter(bar -> !bar.window().from().isBefore(axis.span().from())
                        && !bar.window().to().isAfter(axis.span().to()))
                .toList();
        new RainBars(canvas, axis, units).draw(inside, RAIN_TOP, RAIN_BASE);
        water();
        return canvas.finished();
    }

    private void chances() {
        List<StandOutlook> shown = panel.stands().stream().limit(2).toList();
        canvas.text("chance of a stand if seeded then", SMALL, LEFT, NAMES - 12);
        double left = LEFT;
        for (int i = 0; i < shown.size(); i++) {
            left = name(shown.get(i).mix(), left, i > 0);
        }
        canvas.line(LEFT, CHANCE_TOP, RIGHT, CHANCE_TOP, Ink.FAINT);
        canvas.textEndingAt("100%", SMALL, LEFT - 4, CHANCE_TOP + 4);
        canvas.textEndingAt("50%", SMALL, LEFT - 4, (CHANCE_TOP + CHANCE_BASE) / 2 + 3);
        canvas.textEndingAt("0", SMALL, LEFT - 4, CHANCE_BASE + 1);
        canvas.line(LEFT, CHANCE_BASE, RIGHT, CHANCE_BASE, Ink.LINE);
        for (int i = shown.size() - 1; i >= 0; i--) {
            canvas.curve(chance(shown.get(i)), ink(i > 0), i > 0);
        }
        nextSeeding(shown.get(0));
    }

    private static Ink ink(boolean second) {
        return second ? Ink.CHANCE : Ink.AMOUNT;
    }

    /** A sample of the line and its mix; where the next one may begin. */
    private double name(String mix, double left, boolean second) {
        Line2D sample = new Line2D.Double(left, NAMES - 3, left + SAMPLE, NAMES - 3);
        canvas.curve(sample, ink(second), second);
        canvas.text(mix, SMALL, left + SAMPLE + 4, NAMES);
        return left + SAMPLE + 12 + canvas.width(mix, SMALL);
    }

    private static double chanceY(double chance) {
        return CHANCE_BASE - chance * (CHANCE_BASE - CHANCE_TOP);
    }

    private Path2D chance(StandOutlook stand) {
        Path2D path = new Path2D.Double();
        for (int h = 0; h < stand.seedingHours(); h++) {
            double x = axis.x(stand.start().plus(Duration.ofHours(h)));
            double y = chanceY(stand.chance()[h]);
            if (h == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        return path;
    }

    /**
     * A dot on the curve at the next possible hour, with its chance beside it on paper of its own,
     * so that the curve of another mix does not run through the letters.
     */
    private void nextSeeding(StandOutlook stand) {
        Instant next = panel.nextSeedAt();
        int hour = (int) Duration.between(stand.start(), next).toHours();
        if (hour < 0 || hour >= stand.seedingHours()) {
            return;
        }
        double chance = stand.chance()[hour];
        double x = axis.x(next);
        double y = chanceY(chance);
        canvas.fill(new Ellipse2D.Double(x - 3, y - 3, 6, 6), Ink.LINE);
        double base = chance > 0.25 ? y + 14 : y - 8;
        String text = Math.round(100 * chance) + "% next";
        double width = canvas.width(text, SMALL);
        double left = Math.min(x + 4, RIGHT - width - 2);
        canvas.fill(
                new Rectangle2D.Double(left - 1, base - SMALL + 1, width + 2, SMALL + 1),
                Ink.PAPER);
        canvas.text(text, SMALL, left, base);
    }

    private void water() {
        canvas.text(
                "water at seed depth: line middle, grey 8 times in 10", SMALL, LEFT, WATER_TOP - 6);
        double most = panel.water().ranges().stream()
                .mapToDouble(Figures.Range::high)
                .reduce(panel.marks().fieldCapacityFraction() * 1.15, Math::max);
        DoubleUnaryOperator y = water -> WATER_BASE - water / most * (WATER_BASE - WATER_TOP);
        canvas.fill(band(y), Ink.RANGE);
        mark("moist", y.applyAsDouble(panel.marks().fieldCapacityFraction()));
        mark("dry", y.applyAsDouble(panel.marks().wiltingFraction()));
        canvas.curve(middle(y), Ink.AMOUNT, false);
        canvas.line(LEFT, WATER_BASE, RIGHT, WATER_BASE, Ink.LINE);
    }

    private void mark(String name, double y) {
        canvas.line(LEFT, y, RIGHT, y, Ink.CHANCE);
        canvas.textEndingAt(name, SMALL, LEFT - 4, y + 3);
    }

    private Path2D middle(DoubleUnaryOperator y) {
        Path2D path = new Path2D.Double();
        List<Figures.Range> ranges = panel.water().ranges();
        for (int i = 0; i < ranges.size(); i++) {
            double x = axis.x(panel.water().timeOf(i));
            double at = y.applyAsDouble(ranges.get(i).middle());
            if (i == 0) {
                path.moveTo(x, at);
            } else {
                path.lineTo(x, at);
            }
        }
        return path;
    }

    private Path2D band(DoubleUnaryOperator y) {
        Path2D path = new Path2D.Double();
        List<Figures.Range> ranges = panel.water().ranges();
        path.moveTo(LEFT, y.applyAsDouble(ranges.get(0).high()));
        for (int i = 1; i < ranges.size(); i++) {
            path.lineTo(
                    axis.x(panel.water().timeOf(i)),
                    y.applyAsDouble(ranges.get(i).high()));
        }
        for (int i = ranges.size() - 1; i >= 0; i--) {
            path.lineTo(
                    axis.x(panel.water().timeOf(i)),
                    y.applyAsDouble(ranges.get(i).low()));
        }
        path.closePath();
        return path;
    }
}
