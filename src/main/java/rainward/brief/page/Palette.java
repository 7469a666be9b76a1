package rainward.brief.page;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Pairs of ink and paper, by day and by night. Text is set in no other pair; each keeps the
 * contrast of WCAG 2.1 level AA, 4.5 to 1.
 */
enum Palette {
    /** Around the page. */
    DESK("3f4f4b", "eef0ea", "aebbb8", "0f1617"),
    /** Plain text. */
    PAGE("1c2b2e", "ffffff", "e6ecea", "172123"),
    /** Less important text. */
    QUIET("4d5e61", "ffffff", "b3c0bd", "172123"),
    /** Headings and chances. */
    STRONG("0f4c58", "ffffff", "93d2dc", "172123"),
    /** The rank of a field. */
    RANK("ffffff", "0f4c58", "0f1617", "93d2dc"),
    /** Today's headline. */
    HEADLINE("12383f", "e3eef0", "dcebee", "21343a"),
    /** What has to be known before all else. */
    NOTICE("5c3500", "fff1d6", "ffdd9e", "3a2a0d");

    private final String ink;
    private final String paper;
    private final String nightInk;
    private final String nightPaper;

    Palette(String ink, String paper, String nightInk, String nightPaper) {
        this.ink = "#" + ink;
        this.paper = "#" + paper;
        this.nightInk = "#" + nightInk;
        this.nightPaper = "#" + nightPaper;
    }

    String ink() {
        return ink;
    }

    String paper() {
        return paper;
    }

    String nightInk() {
        return nightInk;
    }

    String nightPaper() {
        return nightPaper;
    }

    String cssClass() {
        return "i-" + name().toLowerCase(Locale.ROOT);
    }

    String css() {
        return "color:" + ink + ";background-color:" + paper + ";";
    }

    /** Rules for the night; they must win over the inline style of the day. */
    static String nightRules() {
        return Arrays.stream(values())
                .map(p -> "." + p.cssClass() + "{color:" + p.nightInk
                        + "!important;background-color:" + p.nightPaper + "!important}")
                .collect(Collectors.joining("\n"));
    }
}
