package rainward.brief.picture;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.StringJoiner;
import java.util.stream.IntStream;

/**
 * Writes the outlines of the letters that pictures may need, Latin with its usual accents, from a
 * font file: {@code OutlineWriter FONT.ttf OUT.txt}. The kept ones are of DejaVu Sans 2.37.
 */
final class OutlineWriter {

    private static final String[] COMMANDS = {"M", "L", "Q", "C", "Z"};

    private OutlineWriter() {}

    public static void main(String[] args) throws IOException, FontFormatException {
        Files.writeString(Path.of(args[1]), outlines(Path.of(args[0])));
    }

    static String outlines(Path fontFile) throws IOException, FontFormatException {
        Font font = Font.createFont(Font.TRUETYPE_FONT, fontFile.toFile()).deriveFont(1000f);
        StringBuilder out = new StringBuilder("# " + font.getFontName()
                + " as outlines, written by OutlineWriter; licence in LICENSE-DejaVu.txt\n");
        IntStream.concat(
                        IntStream.concat(
                                IntStream.rangeClosed(0x20, 0x7E),
                                IntStream.rangeClosed(0xA0, 0x17F)),
                        IntStream.of(0x2013, 0x2014, 0x2018, 0x2019, 0x201C, 0x201D, 0x2026))
                .filter(code -> code != 0xAD && font.canDisplay(code))
                .forEach(code -> out.append(line(font, code)).append('\n'));
        return out.toString();
    }

    private static String line(Font font, int code) {
        var context = new FontRenderContext(null, true, true);
        GlyphVector glyph = font.createGlyphVector(context, Character.toString(code));
        StringJoiner line = new StringJoiner(" ");
        line.add(Integer.toHexString(code));
        line.add(Long.toString(Math.round(glyph.getGlyphMetrics(0).getAdvanceX())));
        double[] at = new double[6];
        PathIterator path = glyph.getOutline().getPathIterator(null);
        for (; !path.isDone(); path.next()) {
            int kind = path.currentSegment(at);
            line.add(COMMANDS[kind]);
            int numbers = new int[] {2, 2, 4, 6, 0}[kind];
            IntStream.range(0, numbers).forEach(i -> line.add(Long.toString(Math.round(at[i]))));
        }
        return line.toString();
    }
}
