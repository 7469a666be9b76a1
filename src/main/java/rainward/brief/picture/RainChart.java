package rainward.brief.picture;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import rainward.brief.RainPanel;
import rainward.cycle.RainPicture.Bar;
import rainward.farm.Operation;
import rainward.farm.UnitSystem;
import rainward.farm.Window;

/**
 * Rain ahead at one property: chance and amount by six hours, and below them on the same days the
 * work that is planned there. {@value #WIDTH} units wide, so that it fills a narrow phone and two
 * stand side by side on a wider screen.
 */
public final class RainChart {

    /** Width as shown; the image has twice as many dots. */
    public static final int WIDTH = 266;

    /** Height as shown. */
    public static final int HEIGHT = 190;

    private static final double LEFT = 34;
    private static final double RIGHT = WIDTH - 6.0;
    private static final double CHANCE_TOP = 18;
    private static final double CHANCE_BASE = 72;
    private static final double AMOUNT_TOP = 96;
    private static final double AMOUNT_BASE = 136;
    private static final double WORK_TOP = 152;
    private static final double WORK_BASE = 166;
    private static final double SMALL = 9.5;

    /** Work shorter than that could not be seen. */
    private static final double LEAST_WORK_WIDTH = 3;

    private final RainPanel panel;
    private final Canvas canvas;
    private final TimeAxis axis;
    private final RainBars rain;

    private RainChart(RainPanel panel, ZoneId zone, UnitSystem units, Lettering lettering) {
        this.panel = panel;
        this.canvas = new Canvas(WIDTH, HEIGHT, lettering);
        List<Bar> bars = panel.bars();
        Window span = new Window(
                bars.get(0).window().from(), bars.get(bars.size() - 1).window().to());
        this.axis = new TimeAxis(span, zone, LEFT, RIGHT);
        this.rain = new RainBars(canvas, axis, units);
    }

    /**
     * Draws a panel that has at least one bar.
     *
     * @param panel what is drawn
     * @param zone of the farm, for the days
     * @param units of the amounts
     * @param lettering letters as outlines
     */
    public static BufferedImage draw(
            RainPanel panel, ZoneId zone, UnitSystem units, Lettering lettering) {
        if (panel.bars().isEmpty()) {
            throw new IllegalArgumentException("no bars for " + panel.property());
        }
        return new RainChart(panel, zone, units, lettering).draw();
    }

    private BufferedImage draw() {
        axis.draw(canvas, CHANCE_TOP, WORK_BASE, HEIGHT - 8.0);
        chances();
        rain.draw(panel.bars(), AMOUNT_TOP, AMOUNT_BASE);
        work();
        return canvas.finished();
    }

    private void chances() {
        canvas.text("chance of rain in 6 hours", SMALL, LEFT, CHANCE_TOP - 6);
        canvas.line(LEFT, CHANCE_TOP, RIGHT, CHANCE_TOP, Ink.FAINT);
        canvas.textEndingAt("100%", SMALL, LEFT - 4, CHANCE_TOP + 4);
        canvas.textEndingAt("0", SMALL, LEFT - 4, CHANCE_BASE + 1);
        for (Bar bar : panel.bars()) {
            double top = CHANCE_BASE - bar.chance() * (CHANCE_BASE - CHANCE_TOP);
            rain.column(bar, top, CHANCE_BASE, Ink.CHANCE);
        }
        canvas.line(LEFT, CHANCE_BASE, RIGHT, CHANCE_BASE, Ink.LINE);
        panel.likeliest().ifPresent(this::nameChance);
    }

    /**
     * The best chance stands over its bar, where no other bar reaches; beside it where the bar
     * leaves no room, on the side that has some.
     */
    private void nameChance(Bar bar) {
        String text = Math.round(100 * bar.chance()) + "%";
        double y = CHANCE_BASE - bar.chance() * (CHANCE_BASE - CHANCE_TOP);
        double from = axis.x(bar.window().from());
        double to = axis.x(bar.window().to());
        double half = canvas.width(text, SMALL) / 2;
        if (y - CHANCE_TOP > SMALL + 3) {
            double middle = Math.max(LEFT + half, Math.min(RIGHT - half, (from + to) / 2));
            canvas.textAround(text, SMALL, middle, y - 3);
        } else if (from - 3 - 2 * half > LEFT) {
            canvas.textEndingAt(text, SMALL, from - 3, CHANCE_TOP + SMALL);
        } else {
            canvas.text(text, SMALL, to + 3, CHANCE_TOP + SMALL);
        }
    }

    private void work() {
        canvas.textEndingAt("work", SMALL, LEFT - 4, WORK_BASE - 3);
        canvas.line(LEFT, WORK_BASE, RIGHT, WORK_BASE, Ink.LINE);
        panel.work().stream()
                .filter(work -> work.window().overlaps(axis.span()))
                .sorted(Comparator.comparing(work -> work.operation() == Operation.SEED))
                .forEach(this::work);
    }

    private void work(RainPanel.Work work) {
        double from = Math.max(LEFT, axis.x(work.window().from()));
        double to = Math.min(RIGHT, axis.x(work.window().to()));
        double width = Math.max(LEAST_WORK_WIDTH, to - from);
        if (work.operation() == Operation.SEED) {
            canvas.fill(
                    new Rectangle2D.Double(from, WORK_TOP, width, WORK_BASE - WORK_TOP), Ink.SEED);
        } else {
            double half = (WORK_TOP + WORK_BASE) / 2;
            canvas.stripes(
                    new Rectangle2D.Double(from, half, width, WORK_BASE - half), Ink.OTHER_WORK);
        }
    }
}
