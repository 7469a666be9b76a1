package rainward.brief.plain;

import java.util.ArrayList;
import java.util.List;

/** Text for a screen of fixed columns. */
public final class Columns {

    /**
     * A line of plain mail: RFC 5322 2.1.1 asks for at most 78; old phones and quoting want less.
     */
    public static final int WIDTH = 72;

    private Columns() {}

    /** Columns that a text takes: two for wide signs and emoji, none for marks on other signs. */
    public static int width(String text) {
        return text.codePoints().map(Columns::width).sum();
    }

    private static int width(int codePoint) {
        int type = Character.getType(codePoint);
        if (type == Character.NON_SPACING_MARK
                || type == Character.ENCLOSING_MARK
                || type == Character.FORMAT) {
            return 0;
        }
        return isWide(codePoint) ? 2 : 1;
    }

    /** East Asian wide signs and the blocks of emoji, roughly (Unicode UAX 11). */
    private static boolean isWide(int codePoint) {
        return codePoint >= 0x1100 && codePoint <= 0x115F
                || codePoint >= 0x2E80 && codePoint <= 0xA4CF
                || codePoint >= 0xAC00 && codePoint <= 0xD7A3
                || codePoint >= 0xF900 && codePoint <= 0xFAFF
                || codePoint >= 0xFE30 && codePoint <= 0xFE6F
                || codePoint >= 0xFF00 && codePoint <= 0xFF60
                || codePoint >= 0x1F300 && codePoint <= 0x1FAFF
                || codePoint >= 0x20000 && codePoint <= 0x3FFFD;
    }

    /** Fills up with blanks; longer text stays as it is. */
    static String padded(String text, int columns) {
        return text + " ".repeat(Math.max(0, columns - width(text)));
    }

    /**
     * Breaks a text into lines between words; a word longer than a line is broken too.
     *
     * @param first goes before the first line
     * @param rest goes before all others
     */
    static List<String> wrapped(String first, String rest, String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        boolean fresh = true;
        for (String word : text.split(" ", -1)) {
            for (String piece : pieces(word, WIDTH - Math.max(width(first), width(rest)))) {
                if (!fresh && width(line.toString()) + 1 + width(piece) > WIDTH) {
                    lines.add(line.toString());
                    line = new StringBuilder(rest);
                    fresh = true;
                }
                line.append(fresh ? "" : " ").append(piece);
                fresh = false;
            }
        }
        lines.add(line.toString());
        return lines;
    }

    private static List<String> pieces(String word, int columns) {
        List<String> pieces = new ArrayList<>();
        StringBuilder piece = new StringBuilder();
        for (int sign : word.codePoints().toArray()) {
            if (width(piece.toString()) + width(sign) > columns) {
                pieces.add(piece.toString());
                piece = new StringBuilder();
            }
            piece.appendCodePoint(sign);
        }
        pieces.add(piece.toString());
        return pieces;
    }
}
