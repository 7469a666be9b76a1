package rainward.brief.picture;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Scanner;

/**
 * Letters as outlines, so that pictures look the same on every machine: AWT draws no text at all
 * where no font is installed. Text is laid out letter by letter, without kerning.
 */
public final class Lettering {

    /** Size of the square that the outlines are drawn in. */
    private static final double EM = 1000;

    private static final char UNKNOWN = '?';

    private final Map<Integer, Glyph> glyphs;
    private final Glyph unknown;

    private Lettering(Map<Integer, Glyph> glyphs, Glyph unknown) {
        this.glyphs = glyphs;
        this.unknown = unknown;
    }

    /** One letter in a square of {@link #EM}; y runs down from the base line. */
    private record Glyph(double advancePerEmFraction, Path2D outline) {}

    /**
     * Reads outlines: a line a letter, of its code in hexadecimal, its advance, and segments
     * {@code M x y}, {@code L x y}, {@code Q x y x y}, {@code C x y x y x y} and {@code Z} in
     * thousandths of the square. Lines that start with {@code #} are remarks.
     */
    public static Lettering of(String outlines) {
        Map<Integer, Glyph> glyphs = new LinkedHashMap<>();
        outlines.lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .forEach(line -> {
                    Scanner parts = new Scanner(line);
                    int code = Integer.parseInt(parts.next(), 16);
                    glyphs.put(code, new Glyph(parts.nextInt() / EM, outline(parts)));
                });
        return Optional.ofNullable(glyphs.get((int) UNKNOWN))
                .map(unknown -> new Lettering(glyphs, unknown))
                .orElseThrow(() ->
                        new IllegalArgumentException("the outlines lack the letter " + UNKNOWN));
    }

    private static Path2D outline(Scanner parts) {
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        while (parts.hasNext()) {
            switch (parts.next()) {
                case "M" -> path.moveTo(parts.nextInt(), parts.nextInt());
                case "L" -> path.lineTo(parts.nextInt(), parts.nextInt());
                case "Q" ->
                    path.quadTo(parts.nextInt(), parts.nextInt(), parts.nextInt(), parts.nextInt());
                case "C" ->
                    path.curveTo(
                            parts.nextInt(),
                            parts.nextInt(),
                            parts.nextInt(),
                            parts.nextInt(),
                            parts.nextInt(),
                            parts.nextInt());
                default -> path.closePath();
            }
        }
        return path;
    }

    /** Width of a text at a size. */
    double width(String text, double size) {
        return text.codePoints()
                .mapToDouble(c -> glyph(c).advancePerEmFraction() * size)
                .sum();
    }

    /** Outline of a text with its left end on the base line at a place. */
    Shape outline(String text, double size, double x, double y) {
        Path2D whole = new Path2D.Double(Path2D.WIND_NON_ZERO);
        double at = x;
        for (int code : text.codePoints().toArray()) {
            Glyph glyph = glyph(code);
            AffineTransform place = AffineTransform.getTranslateInstance(at, y);
            place.scale(size / EM, size / EM);
            whole.append(glyph.outline().getPathIterator(place), false);
            at += glyph.advancePerEmFraction() * size;
        }
        return whole;
    }

    private Glyph glyph(int code) {
        return glyphs.getOrDefault(code, unknown);
    }
}
