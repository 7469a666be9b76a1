package rainward.brief;

import java.util.Locale;
import java.util.TreeSet;
import java.util.stream.Collectors;
import rainward.window.StormWindow;

/**
 * Text that somebody else wrote, made harmless for one line of a page or a header: what would break
 * a line, turn the direction of reading or hide is shown as its code, the rest as it is.
 */
public final class Literal {

    private static final int ZERO_WIDTH_JOINER = 0x200D;

    private Literal() {}

    /** One line that shows all of the text. */
    public static String of(String text) {
        return text.codePoints().mapToObj(Literal::shown).collect(Collectors.joining());
    }

    /** A storm window with names that harm no page. */
    public static StormWindow of(StormWindow window) {
        return new StormWindow(
                window.id(),
                window.properties().stream()
                        .map(Literal::of)
                        .collect(Collectors.toCollection(TreeSet::new)),
                window.chance(),
                window.arrival(),
                window.amount(),
                window.hardRainChance(),
                window.fits().stream().map(Literal::fit).toList(),
                window.leave().stream().map(Literal::of).toList());
    }

    private static StormWindow.Fit fit(StormWindow.Fit fit) {
        return new StormWindow.Fit(
                Literal.of(fit.field()), fit.plannedStart(), fit.lastSafeStart(), fit.chance());
    }

    private static String shown(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR ->
                control(codePoint);
            // Emoji of several parts need the joiner; it moves nothing and hides nothing.
            case Character.FORMAT ->
                codePoint == ZERO_WIDTH_JOINER ? Character.toString(codePoint) : code(codePoint);
            case Character.SURROGATE -> code(codePoint);
            default -> Character.toString(codePoint);
        };
    }

    private static String control(int codePoint) {
        return switch (codePoint) {
            case '\r' -> "\\r";
            case '\n' -> "\\n";
            case '\t' -> " ";
            default -> code(codePoint);
        };
    }

    private static String code(int codePoint) {
        return String.format(Locale.ROOT, "\\u%04x", codePoint);
    }
}
