package rainward.brief.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;

/** A picture under way; twice as many dots each way as its units, for sharp screens. */
final class Canvas {

    private static final int DOTS_PER_UNIT = 2;

    private static final double STRIPE = 3;

    private final Lettering lettering;
    private final BufferedImage image;
    private final Graphics2D graphics;

    Canvas(int width, int height, Lettering lettering) {
        this.lettering = lettering;
        this.image = new BufferedImage(
                width * DOTS_PER_UNIT, height * DOTS_PER_UNIT, BufferedImage.TYPE_INT_RGB);
        this.graphics = image.createGraphics();
        graphics.setRenderingHint(
                RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(
                RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.scale(DOTS_PER_UNIT, DOTS_PER_UNIT);
        fill(new Rectangle2D.Double(0, 0, width, height), Ink.PAPER);
    }

    BufferedImage finished() {
        graphics.dispose();
        return image;
    }

    void fill(Shape shape, Ink ink) {
        graphics.setColor(ink.color());
        graphics.fill(shape);
    }

    void line(double fromX, double fromY, double toX, double toY, Ink ink) {
        draw(new Line2D.Double(fromX, fromY, toX, toY), ink);
    }

    void draw(Shape shape, Ink ink) {
        draw(shape, ink, new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
    }

    /** A curve that stands out, drawn through or in dashes. */
    void curve(Shape shape, Ink ink, boolean dashed) {
        float[] dashes = dashed ? new float[] {5f, 3f} : null;
        draw(
                shape,
                ink,
                new BasicStroke(
                        1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, dashes, 0f));
    }

    private void draw(Shape shape, Ink ink, BasicStroke stroke) {
        graphics.setColor(ink.color());
        graphics.setStroke(stroke);
        graphics.draw(shape);
    }

    /** Slanted stripes inside a frame. */
    void stripes(Rectangle2D box, Ink ink) {
        Shape before = graphics.getClip();
        graphics.clip(box);
        double slant = box.getHeight();
        for (double x = box.getMinX() - slant; x < box.getMaxX(); x += STRIPE) {
            line(x, box.getMaxY(), x + slant, box.getMinY(), ink);
        }
        graphics.setClip(before);
        draw(box, ink);
    }

    /** Text with its left end at a place on the base line. */
    void text(String text, double size, double x, double y) {
        fill(lettering.outline(text, size, x, y), Ink.LINE);
    }

    void textEndingAt(String text, double size, double x, double y) {
        text(text, size, x - lettering.width(text, size), y);
    }

    void textAround(String text, double size, double x, double y) {
        text(text, size, x - lettering.width(text, size) / 2, y);
    }

    double width(String text, double size) {
        return lettering.width(text, size);
    }
}
